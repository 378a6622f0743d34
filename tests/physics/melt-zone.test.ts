import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  coreTemperatureAtFlow,
  flowAtCoreTemperature,
  flowAtCoreTheta,
  flowAtResidenceFourier,
  type MeltZone,
  meanTemperatureAtFlow,
  residenceFourier,
} from '../../src/physics/melt-zone.ts';

const zone: MeltZone = {
  wallTemperature: 230,
  entryTemperature: 25,
  diffusivity: 0.0862,
  heatedLength: 20,
};
const flow = fc.double({ min: 0.5, max: 200, noNaN: true });

describe('residenceFourier', () => {
  it('is undone by flowAtResidenceFourier', () => {
    fc.assert(
      fc.property(flow, (q) => {
        expect(flowAtResidenceFourier(0.09, 15, residenceFourier(0.09, 15, q)) / q).toBeCloseTo(1, 12);
      }),
    );
  });
});

describe('temperatures at a flow', () => {
  it('lie between entry and wall, the core no hotter than the mean', () => {
    fc.assert(
      fc.property(flow, (q) => {
        const [core, mean] = [coreTemperatureAtFlow(zone, q), meanTemperatureAtFlow(zone, q)];
        expect(core).toBeGreaterThanOrEqual(25);
        expect(mean).toBeLessThanOrEqual(230);
        expect(core).toBeLessThanOrEqual(mean + 1e-9);
      }),
    );
  });

  it('fall with the flow', () => {
    fc.assert(
      fc.property(flow, flow, (q, more) => {
        expect(coreTemperatureAtFlow(zone, q + more)).toBeLessThanOrEqual(
          coreTemperatureAtFlow(zone, q) + 1e-9,
        );
        expect(meanTemperatureAtFlow(zone, q + more)).toBeLessThan(meanTemperatureAtFlow(zone, q));
      }),
    );
  });

  it('are those of the wall when nothing flows', () => {
    expect(coreTemperatureAtFlow(zone, 0)).toBe(230);
  });
});

describe('flowAtCoreTemperature', () => {
  it('undoes coreTemperatureAtFlow', () => {
    fc.assert(
      fc.property(fc.double({ min: 30, max: 229, noNaN: true }), (temperature) => {
        const q = flowAtCoreTemperature(zone, temperature);
        expect(coreTemperatureAtFlow(zone, q)).toBeCloseTo(temperature, 8);
      }),
    );
  });

  it('grows with the heated length and not with anything else of the tube', () => {
    expect(flowAtCoreTheta(0.09, 40, 0.1)).toBeCloseTo(2 * flowAtCoreTheta(0.09, 20, 0.1), 10);
  });

  it('is nothing for a core at wall temperature, and without limit for a core as it entered', () => {
    expect(flowAtCoreTemperature(zone, 230)).toBe(0);
    expect(flowAtCoreTemperature(zone, 25)).toBe(Number.POSITIVE_INFINITY);
  });
});
