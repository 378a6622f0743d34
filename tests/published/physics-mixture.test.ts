import { describe, expect, it } from 'vitest';
import { fillerDensity } from '../../src/physics/filler-density.ts';
import { densityOfFilledGrade, fillerMassFractionAtDensity } from '../../src/physics/mixture.ts';
import { parsePlasticsDesignation } from '../../src/physics/plastics-designation.ts';

// Density of PA66: Crawford, Plastics Engineering, 3rd ed. 1998, Table 1.8: 1.14 g/cm³.
const pa66 = 1.14e-3;

describe('PA66-GF30', () => {
  it('of glass at 2.55 g/cm³ has 1.367 g/cm³', () => {
    // Handbooks of plastics give 1.36 to 1.37 (from memory).
    expect(densityOfFilledGrade(pa66, 2.55e-3, 0.3)).toBeCloseTo(1.367e-3, 6);
  });

  it('comes within 1.36 to 1.37 g/cm³ from its designation alone', () => {
    const designation = parsePlasticsDesignation('PA66-GF30');
    const [filler] = designation.ok ? designation.value.fillers : [];
    const glass = filler && fillerDensity(filler);
    for (const density of [glass?.low, glass?.high]) {
      const mixed = densityOfFilledGrade(pa66, density ?? Number.NaN, filler?.massFraction ?? Number.NaN);
      expect(mixed * 1000).toBeGreaterThan(1.355);
      expect(mixed * 1000).toBeLessThan(1.375);
    }
  });

  it('is told by a density of 1.36 g/cm³ as about 29 % of glass', () => {
    // From the same handbook range, read backwards.
    expect(fillerMassFractionAtDensity(1.36e-3, pa66, 2.55e-3)).toBeCloseTo(0.293, 3);
  });
});
