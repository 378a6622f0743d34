import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Heating, meltPower } from '../../src/physics/melt-power.ts';

const amorphous: Heating = {
  density: 1.24e-3,
  specificHeat: 1.8,
  nozzleTemperature: 230,
  ambientTemperature: 25,
  crystallinity: 0,
  heatOfFusion: 93,
};

describe('meltPower', () => {
  it('grows with the flow', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 300, noNaN: true }), (flow) => {
        expect(meltPower(amorphous, flow) / meltPower(amorphous, 1)).toBeCloseTo(flow, 9);
      }),
    );
  });

  it('takes the heat of fusion of the crystal only', () => {
    const halfCrystalline = { ...amorphous, crystallinity: 0.5 };
    const extra = meltPower(halfCrystalline, 10) - meltPower(amorphous, 10);
    expect(extra).toBeCloseTo(1.24e-3 * 10 * 0.5 * 93, 12);
  });

  it('is nothing for feedstock that enters at nozzle temperature', () => {
    expect(meltPower({ ...amorphous, ambientTemperature: 230 }, 10)).toBe(0);
  });
});
