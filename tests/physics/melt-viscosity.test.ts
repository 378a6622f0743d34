import { describe, expect, it } from 'vitest';
import { viscosityRatio } from '../../src/physics/melt-viscosity.ts';

describe('viscosityRatio', () => {
  it('is one at the reference, more below it and less above', () => {
    expect(viscosityRatio(230, 230, 60)).toBe(1);
    expect(viscosityRatio(200, 230, 60)).toBeGreaterThan(1);
    expect(viscosityRatio(240, 230, 60)).toBeLessThan(1);
  });

  it('goes from one temperature to another over a third', () => {
    const [a, b, c] = [150, 190, 230];
    expect(viscosityRatio(a, b, 60) * viscosityRatio(b, c, 60)).toBeCloseTo(viscosityRatio(a, c, 60), 9);
  });

  it('is endless where nothing flows', () => {
    expect(viscosityRatio(60, 230, 60)).toBe(Number.POSITIVE_INFINITY);
    expect(viscosityRatio(20, 230, 60)).toBe(Number.POSITIVE_INFINITY);
  });
});
