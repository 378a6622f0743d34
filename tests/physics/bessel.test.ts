import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { besselJ0, besselJ1, zerosOfBesselJ0, zerosOfBesselJ1 } from '../../src/physics/bessel.ts';

const argument = fc.double({ min: 0.01, max: 300, noNaN: true });

describe('besselJ0 and besselJ1', () => {
  it('start at 1 and 0', () => {
    expect(besselJ0(0)).toBe(1);
    expect(besselJ1(0)).toBe(0);
  });

  it('agree with the power series where that converges fast', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 4, noNaN: true }), (x) => {
        let term = 1;
        let sum = 1;
        for (let k = 1; k < 40; k += 1) {
          term *= -((x / 2) ** 2) / k ** 2;
          sum += term;
        }
        expect(Math.abs(besselJ0(x) - sum)).toBeLessThan(1e-14);
      }),
    );
  });

  it('are one function on both sides of the change of method', () => {
    const [below, above] = [25 - 1e-9, 25 + 1e-9];
    expect(Math.abs(besselJ0(above) - besselJ0(below) + 2e-9 * besselJ1(25))).toBeLessThan(1e-14);
    const slope = besselJ0(25) - besselJ1(25) / 25;
    expect(Math.abs(besselJ1(above) - besselJ1(below) - 2e-9 * slope)).toBeLessThan(1e-14);
  });

  it('satisfy J0 prime = -J1', () => {
    fc.assert(
      fc.property(argument, (x) => {
        const h = 1e-3 * Math.min(1, x);
        const at = (k: number): number => besselJ0(x + k * h);
        const derivative = (8 * (at(1) - at(-1)) - (at(2) - at(-2))) / (12 * h);
        expect(Math.abs(derivative + besselJ1(x))).toBeLessThan(1e-9);
      }),
    );
  });
});

describe.each([
  ['zerosOfBesselJ0', zerosOfBesselJ0, besselJ0],
  ['zerosOfBesselJ1', zerosOfBesselJ1, besselJ1],
])('%s', (_, zeros, bessel) => {
  const first = zeros(100);

  it('are zeros', () => {
    for (const zero of first) {
      expect(Math.abs(bessel(zero))).toBeLessThan(1e-13);
    }
  });

  it('come about pi apart, none left out', () => {
    for (const [index, zero] of first.entries()) {
      const gap = (first[index + 1] ?? zero + Math.PI) - zero;
      expect(Math.abs(gap - Math.PI)).toBeLessThan(0.05);
    }
  });
});
