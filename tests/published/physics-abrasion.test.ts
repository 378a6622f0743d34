import { describe, expect, it } from 'vitest';
import { abrasion } from '../../src/physics/abrasion.ts';

// Richardson, Wear 11 (1968) 245-275; Zum Gahr, Microstructure and Wear of Materials (1987). Rule and hardness from memory.
describe('abrasion by hardness', () => {
  it('glass of about 550 HV grinds brass of about 130 HV', () => {
    expect(abrasion(550, 130)).toBe('severe');
  });

  it('glass of about 550 HV hardly grinds steel of 60 HRC, 697 HV', () => {
    expect(abrasion(550, 697)).toBe('mild');
  });

  it('quartz of 900 HV and more grinds steel of 60 HRC', () => {
    // Hardness of quartz: Mohs minerals with Vickers hardness, 900 to 1280 HV.
    expect(abrasion(900, 697)).toBe('severe');
  });
});
