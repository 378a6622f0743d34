import { describe, expect, it } from 'vitest';
import {
  conductionModes,
  cylinderCentreTheta,
  cylinderMeanTheta,
  cylinderTheta,
  fourierForCentreTheta,
} from '../../src/physics/cylinder-conduction.ts';
import { flowAtCoreTheta, thermalDiffusivity } from '../../src/physics/melt-zone.ts';

// Incropera, DeWitt, Bergman & Lavine, Fundamentals of Heat and Mass Transfer, Table 5.1; the same numbers in Cengel,
// Heat Transfer, Table 4-2. Columns: Bi, root and coefficient as printed, then recomputed to 9 digits.
const table51 = [
  [0.01, 0.1412, 1.0025, 0.141244764, 1.00249583],
  [0.02, 0.1995, 1.005, 0.199501042, 1.0049833],
  [0.04, 0.2814, 1.0099, 0.281434397, 1.00993307],
  [0.1, 0.4417, 1.0246, 0.441681783, 1.02457936],
  [0.2, 0.617, 1.0483, 0.616974766, 1.04830437],
  [0.4, 0.8516, 1.0931, 0.851578432, 1.09314473],
  [0.5, 0.9408, 1.1143, 0.940770564, 1.11425463],
  [0.8, 1.149, 1.1724, 1.14897162, 1.17243376],
  [1.0, 1.2558, 1.2071, 1.25578371, 1.20709206],
  // Printed 1.5995; the exact value rounds to 1.5994.
  [2.0, 1.5995, 1.3384, 1.59944921, 1.33837714],
  [4.0, 1.9081, 1.4698, 1.90807879, 1.46979557],
  [5.0, 1.9898, 1.5029, 1.98981471, 1.5028691],
  [10, 2.1795, 1.5677, 2.1794966, 1.56769184],
  [100, 2.3809, 1.6015, 2.38090166, 1.60152387],
  [Number.POSITIVE_INFINITY, 2.4048, 1.6021, 2.40482556, 1.6019747],
] as const;

describe('one-term coefficients of the infinite cylinder', () => {
  it.each(table51)('at Bi %d', (biot, printedRoot, printedCoefficient, root, coefficient) => {
    const [mode] = conductionModes(biot, 1);
    const [actualRoot, actualCoefficient] = [mode?.root ?? Number.NaN, mode?.coefficient ?? Number.NaN];
    // The last row's coefficient is printed as 1.6021 or 1.6018, by edition.
    expect(Math.abs(actualRoot - printedRoot)).toBeLessThan(1e-4);
    expect(Math.abs(actualCoefficient - printedCoefficient)).toBeLessThan(
      biot === Number.POSITIVE_INFINITY ? 2e-4 : 1e-4,
    );
    expect(Math.abs(actualRoot - root)).toBeLessThan(6e-9);
    expect(Math.abs(actualCoefficient - coefficient)).toBeLessThan(6e-9);
  });
});

describe('wall at one temperature', () => {
  it.each([
    [0.05, 0.98709922, 0.547879],
    [0.1, 0.84835511, 0.39417581],
    [0.2, 0.50148686, 0.21785245],
    [0.3, 0.28248707, 0.12202847],
    [0.5, 0.08888972, 0.03837871],
    [1.0, 0.0049323, 0.00212955],
  ])('at Fo %d has centre theta %d and mean theta %d', (fourier, centre, mean) => {
    // Full series of Incropera et al., section 5.6, recomputed in 25 digits.
    expect(Math.abs(cylinderCentreTheta(fourier) - centre)).toBeLessThan(6e-9);
    expect(Math.abs(cylinderMeanTheta(fourier) - mean)).toBeLessThan(6e-9);
  });

  it.each([
    [0.5, 0.20134, 1.1e-3],
    [0.1, 0.479636, 2e-6],
    [0.05, 0.599491, 1e-6],
    [0.01, 0.877787, 1e-6],
  ])('comes to centre theta %d at Fo %d', (theta, fourier, oneTermError) => {
    // Incropera et al., section 5.6, one term of the series, recomputed; one term is up to 0.001 off at theta 0.5, and 1e-6 at 0.1.
    expect(Math.abs(fourierForCentreTheta(theta) - fourier)).toBeLessThan(oneTermError);
  });
});

describe('worked examples', () => {
  it('Nellis & Klein: Bi 1.02, Fo 0.23, r/R 0.3 gives theta 0.8034', () => {
    // Nellis & Klein, Heat Transfer, Cambridge 2009, section 3.5.2. One term alone would give 0.8076.
    expect(cylinderTheta(0.23, 1.02, 0.3)).toBeCloseTo(0.8034, 4);
    expect(cylinderTheta(0.23, 1.02, 0.3)).toBeCloseTo(0.803373, 6);
  });

  it('Yovanovich: a long cylinder at Bi 0.1 and Fo 0.3', () => {
    // M. M. Yovanovich, University of Waterloo, ME 651 notes, long cylinder (inputs published; results recomputed by full series).
    const biot = (100 * 0.02) / 20;
    const fourier = (20e-6 * 6) / 0.02 ** 2;
    expect(cylinderTheta(fourier, biot, 0)).toBeCloseTo(0.965953, 6);
    expect(cylinderTheta(fourier, biot, 1)).toBeCloseTo(0.919934, 6);
    expect(1 - cylinderMeanTheta(fourier, biot)).toBeCloseTo(0.0570347, 7);
  });

  it.each([0.1, 1, 10])('Yovanovich: first root at Bi %d by his explicit approximation', (biot) => {
    // M. M. Yovanovich, ME 651 notes: z = 2.4048255/(1 + (2.4048255/sqrt(2 Bi))^n)^(1/n), n = 2.238; good to 0.4 %.
    const n = 2.238;
    const approximation = 2.4048255 / (1 + (2.4048255 / Math.sqrt(2 * biot)) ** n) ** (1 / n);
    expect(Math.abs((conductionModes(biot, 1)[0]?.root ?? Number.NaN) / approximation - 1)).toBeLessThan(
      4e-3,
    );
  });
});

describe('filament in a hot tube', () => {
  // k 0.19 W/(m K), 1050 kg/m³, 2100 J/(kg K); Incropera et al., section 5.6, recomputed.
  const diffusivity = thermalDiffusivity(0.19e-3, 1.05e-3, 2.1);

  it('has the diffusivity 8.61678e-8 m²/s', () => {
    expect(diffusivity).toBeCloseTo(0.0861678, 7);
  });

  it('of 1.75 mm has 90 % of the step at its axis after 4.26170 s', () => {
    expect((fourierForCentreTheta(0.1) * 0.875 ** 2) / diffusivity).toBeCloseTo(4.2617, 4);
  });

  it.each([
    [10, 5.644],
    [20, 11.288],
    [30, 16.932],
  ])('over %d mm takes %d mm³/s for a centre theta of 0.1', (length, flow) => {
    expect(flowAtCoreTheta(diffusivity, length, 0.1)).toBeCloseTo(flow, 3);
  });
});
