import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bracketedRoot } from '../../src/physics/bracketed-root.ts';

describe('bracketedRoot', () => {
  it('finds the root of a steep cubic anywhere in the bracket', () => {
    fc.assert(
      fc.property(fc.double({ min: -0.999, max: 9.999, noNaN: true }), (root) => {
        const found = bracketedRoot((x) => (x - root) ** 3 + (x - root), -1, 10);
        expect(found).toBeCloseTo(root, 12);
      }),
    );
  });

  it('takes an end of the bracket that is itself the root', () => {
    expect(bracketedRoot((x) => x - 2, 2, 5)).toBe(2);
  });

  it('takes the nearer end where no change of sign is seen', () => {
    expect(bracketedRoot((x) => x + 1e-17, 0, 5)).toBe(0);
  });

  it('settles on a function that underflows to a flat tail', () => {
    expect(bracketedRoot((x) => Math.exp(-x) - 1e-9, 0, 700)).toBeCloseTo(9 * Math.LN10, 10);
  });
});
