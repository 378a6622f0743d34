import { describe, expect, it } from 'vitest';
import { meltPower } from '../../src/physics/melt-power.ts';

describe('melt power', () => {
  it('of amorphous PLA at 75 mm³/s from 25 to 230 °C is 34.3 W', () => {
    // 1.24e-3 g/mm³ * 75 mm³/s * 1.8 J/(g K) * 205 K; specific heat: Harper, Modern Plastics Handbook (1999), at second hand.
    const heating = {
      density: 1.24e-3,
      specificHeat: 1.8,
      nozzleTemperature: 230,
      ambientTemperature: 25,
      crystallinity: 0,
      heatOfFusion: 93,
    };
    expect(meltPower(heating, 75)).toBeCloseTo(34.3, 1);
  });

  it('of 10 mm³/s at 1.25 g/cm³, 1.8 J/(g K) and 185 K is 4.1625 W', () => {
    // Energy balance, exact arithmetic.
    const heating = {
      density: 1.25e-3,
      specificHeat: 1.8,
      nozzleTemperature: 210,
      ambientTemperature: 25,
      crystallinity: 0,
      heatOfFusion: 0,
    };
    expect(meltPower(heating, 10)).toBeCloseTo(4.1625, 10);
  });
});
