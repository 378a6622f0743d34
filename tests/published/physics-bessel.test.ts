import { describe, expect, it } from 'vitest';
import { besselJ0, besselJ1, zerosOfBesselJ0, zerosOfBesselJ1 } from '../../src/physics/bessel.ts';

describe('Bessel functions', () => {
  it.each([
    [1, 0.765197686557967, 0.440050585744934],
    [2, 0.223890779141236, 0.576724807756873],
    [5, -0.177596771314338, -0.327579137591465],
    [10, -0.245935764451348, 0.043472746168861],
  ])('J0 and J1 of %d', (x, j0, j1) => {
    // Abramowitz & Stegun, Handbook of Mathematical Functions, Table 9.1 (from memory).
    expect(Math.abs(besselJ0(x) - j0)).toBeLessThan(1e-12);
    expect(Math.abs(besselJ1(x) - j1)).toBeLessThan(1e-12);
  });

  it('first zeros of J0', () => {
    // Abramowitz & Stegun, Table 9.5; NIST DLMF 10.21.
    const zeros = [
      2.404825557695773, 5.520078110286311, 8.65372791291101, 11.79153443901428, 14.93091770848779,
    ];
    for (const [index, zero] of zerosOfBesselJ0(5).entries()) {
      expect(Math.abs(zero - (zeros[index] ?? Number.NaN))).toBeLessThan(1e-13);
    }
  });

  it('first zeros of J1', () => {
    // Abramowitz & Stegun, Table 9.5; NIST DLMF 10.21.
    const zeros = [
      3.831705970207512, 7.015586669815619, 10.17346813506272, 13.32369193631422, 16.47063005087763,
    ];
    for (const [index, zero] of zerosOfBesselJ1(5).entries()) {
      expect(Math.abs(zero - (zeros[index] ?? Number.NaN))).toBeLessThan(1e-13);
    }
  });
});
