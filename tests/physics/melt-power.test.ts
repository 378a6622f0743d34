import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Heating, meanSpecificHeat, meltPower } from '../../src/physics/melt-power.ts';

const amorphous: Heating = {
  density: 1.24e-3,
  specificHeat: 1.8,
  nozzleTemperature: 230,
  ambientTemperature: 25,
  crystallinity: 0,
  heatOfFusion: 93,
};

describe('meltPower', () => {
  it('of amorphous PLA at 75 mm³/s from 25 to 230 °C is 34.3 W', () => {
    // By hand: 1.24e-3 g/mm³ * 75 mm³/s * 1.8 J/(g K) * 205 K.
    expect(meltPower(amorphous, 75)).toBeCloseTo(34.3, 1);
  });

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

describe('meanSpecificHeat', () => {
  const heat = { solid: 1.5, melt: 2, transition: 60, fusion: 0 };

  it('is the enthalpy between two temperatures over their difference', () => {
    // 1.5 * 35 + 2 * 165 = 382.5 J/g over 200 K.
    expect(meanSpecificHeat(heat, 25, 225)).toBeCloseTo(382.5 / 200, 12);
  });

  it('spreads the heat of fusion over the way', () => {
    expect(meanSpecificHeat({ ...heat, fusion: 40 }, 25, 225)).toBeCloseTo(422.5 / 200, 12);
  });
});
