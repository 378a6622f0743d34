import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadFolders } from '../../src/host/load-registry.ts';
import { strandStrength, tractionOf } from '../../src/knowledge/traction.ts';
import { filamentArea } from '../../src/physics/filament-geometry.ts';
import { channelPressureDrop } from '../../src/physics/nozzle-pressure.ts';
import { runs } from '../property-runs.ts';

const { registry } = loadFolders(['profiles']);
const families = [...registry.polymer.values()].map(({ data }) => data);
const pla = registry.polymer.get('PLA')!.data;
const filament = registry.filament.get('ashgrove/stagecraft-pla')!.data;

const push = {
  force: 60,
  filament,
  families: [pla],
  nozzleDiameter: 0.4,
  nozzleTemperature: 220,
  meltZoneLength: 20,
};

describe('what a drive pushes through a nozzle', () => {
  it('takes the whole pressure in a melt as viscous as it leaves', () => {
    const { flow, pressure, thickening, meanTemperature } = tractionOf(push)!;
    // The thinnest PLA published has 60 Pa.s.
    expect(channelPressureDrop(60e-6 * thickening, 0.4, 0.2, flow)).toBeCloseTo(pressure, 6);
    expect(pressure).toBeCloseTo(60 / filamentArea(1.75), 9);
    expect(meanTemperature).toBeGreaterThan(55);
    expect(meanTemperature).toBeLessThan(220);
  });

  it('is no more than the strand bears', () => {
    const strong = tractionOf({ ...push, force: 600 })!;
    expect(strong).toMatchObject({ isStrandWeaker: true, pressure: strandStrength([pla]) });
    expect(strong.flow).toBe(tractionOf({ ...push, force: 5000 })!.flow);
    expect(tractionOf(push)!.isStrandWeaker).toBe(false);
  });

  it('has a melt at nozzle temperature where the melt zone is not known', () => {
    const { flow, thickening, meanTemperature } = tractionOf({ ...push, meltZoneLength: null })!;
    expect([thickening, meanTemperature]).toEqual([1, 220]);
    expect(flow).toBeGreaterThan(tractionOf(push)!.flow);
  });

  it('is not known without a viscosity', () => {
    const { meltViscosity: _, ...unknown } = pla;
    expect(tractionOf({ ...push, families: [unknown] })).toBeNull();
    expect(tractionOf({ ...push, families: [] })).toBeNull();
  });

  it('rises with the force, the bore, the melt zone and the temperature, for every family', () => {
    const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom(...families.filter(({ meltViscosity }) => meltViscosity !== undefined)),
        between(1, 300),
        between(0.1, 1.2),
        between(5, 80),
        between(1, 1.3),
        (family, force, nozzleDiameter, meltZoneLength, more) => {
          const base = { ...push, families: [family], force, nozzleDiameter, meltZoneLength };
          const nozzleTemperature = family.nozzleTemperature?.[0]?.value.low ?? 250;
          const flow = (changes: object) => tractionOf({ ...base, nozzleTemperature, ...changes })?.flow ?? 0;
          const least = flow({}) * (1 - 1e-6);
          expect(least).toBeGreaterThan(0);
          expect(flow({ force: more * force })).toBeGreaterThanOrEqual(least);
          expect(flow({ nozzleDiameter: more * nozzleDiameter })).toBeGreaterThanOrEqual(least);
          expect(flow({ meltZoneLength: more * meltZoneLength })).toBeGreaterThanOrEqual(least);
          expect(flow({ nozzleTemperature: nozzleTemperature + 20 })).toBeGreaterThanOrEqual(least);
        },
      ),
      { numRuns: runs(200) },
    );
  });
});
