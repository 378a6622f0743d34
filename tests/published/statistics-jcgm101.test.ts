// JCGM 101:2008, Evaluation of measurement data - Supplement 1 to the GUM - Propagation of distributions using a Monte
// Carlo method; and the end gauge of JCGM 100:2008 (GUM), annex H.1.
import { expect, describe as group, test } from 'vitest';
import type { Distribution } from '../../src/statistics/distributions.ts';
import { propagate } from '../../src/statistics/monte-carlo.ts';

const draws = 1_000_000;
const sum = (values: Readonly<Record<string, number>>) =>
  Object.values(values).reduce((total, each) => total + each, 0);
const fourOf = (input: Distribution) => ({ x1: input, x2: input, x3: input, x4: input });
const rectangular = (standardUncertainty: number): Distribution => ({
  kind: 'rectangular',
  low: -Math.sqrt(3) * standardUncertainty,
  high: Math.sqrt(3) * standardUncertainty,
});

group('clause 9.2, additive model', { tags: 'long' }, () => {
  test('9.2.2: four standard normal inputs, u = 2.0, 95 % interval ±3.92', () => {
    const inputs = fourOf({ kind: 'normal', mean: 0, standardUncertainty: 1 });
    const output = propagate({ inputs, model: sum, draws, seed: '9.2.2' });
    expect(output.standardUncertainty).toBeCloseTo(2.0, 1);
    // Exact value 1.96 × 2 = 3.919928.
    expect(Math.abs(output.symmetric(0.95).low + 3.92)).toBeLessThan(0.02);
    expect(Math.abs(output.symmetric(0.95).high - 3.92)).toBeLessThan(0.02);
    expect(Math.abs(output.shortest(0.95).high - 3.92)).toBeLessThan(0.06);
  });

  test('9.2.3: four rectangular inputs of standard deviation 1, u = 2.0, 95 % interval ±3.88', () => {
    const output = propagate({ inputs: fourOf(rectangular(1)), model: sum, draws, seed: '9.2.3' });
    expect(output.standardUncertainty).toBeCloseTo(2.0, 1);
    // Exact value 3.879407.
    expect(Math.abs(output.symmetric(0.95).low + 3.88)).toBeLessThan(0.02);
    expect(Math.abs(output.symmetric(0.95).high - 3.88)).toBeLessThan(0.02);
  });

  test('9.2.4: one of the rectangular inputs ten times as wide, u = 10.1, 95 % interval ±17.0 (from memory)', () => {
    const inputs = { ...fourOf(rectangular(1)), x4: rectangular(10) };
    const output = propagate({ inputs, model: sum, draws, seed: '9.2.4' });
    expect(output.standardUncertainty).toBeCloseTo(10.1, 1);
    expect(Math.abs(output.symmetric(0.95).low + 17.0)).toBeLessThan(0.06);
    expect(Math.abs(output.symmetric(0.95).high - 17.0)).toBeLessThan(0.06);
  });
});

test('clause 9.3, mass calibration: the product term makes u = 0.0755 mg, 95 % interval [1.08, 1.38] mg', {
  tags: 'long',
}, () => {
  const output = propagate({
    inputs: {
      reference: { kind: 'normal', mean: 100_000, standardUncertainty: 0.05 },
      difference: { kind: 'normal', mean: 1.234, standardUncertainty: 0.02 },
      air: { kind: 'rectangular', low: 1.1, high: 1.3 },
      weight: { kind: 'rectangular', low: 7000, high: 9000 },
      standard: { kind: 'rectangular', low: 7950, high: 8050 },
    },
    model: ({ reference, difference, air, weight, standard }) =>
      (reference + difference) * (1 + (air - 1.2) * (1 / weight - 1 / standard)) - 100_000,
    draws,
    seed: '9.3',
  });
  expect(output.mean).toBeCloseTo(1.2341, 3);
  expect(output.standardUncertainty).toBeCloseTo(0.0755, 3);
  // The ends move by 0.002 between runs, since the density is flat there.
  expect(output.shortest(0.95).low).toBeCloseTo(1.084, 2);
  expect(output.shortest(0.95).high).toBeCloseTo(1.383, 2);
});

group('clause 9.4, Y = X1² + X2² with u = 0.005 and x2 = 0', { tags: 'long' }, () => {
  // Mean x1² + 2u², variance 4u²x1² + 4u⁴, by algebra; in units of 10⁻⁶.
  test.each([
    [0, 50, 50],
    [0.01, 150, 111.803],
    [0.05, 2550, 502.494],
  ])('x1 = %f', (x1, mean, uncertainty) => {
    const output = propagate({
      inputs: {
        x1: { kind: 'normal', mean: x1, standardUncertainty: 0.005 },
        x2: { kind: 'normal', mean: 0, standardUncertainty: 0.005 },
      },
      model: (values) => 1e6 * (values.x1 ** 2 + values.x2 ** 2),
      draws,
      seed: `9.4 ${x1}`,
    });
    expect(output.mean / mean).toBeCloseTo(1, 2);
    expect(output.standardUncertainty / uncertainty).toBeCloseTo(1, 2);
    if (x1 === 0) {
      // 9.4.2: an exponential distribution, whose shortest 95 % interval is [0, 150].
      expect(output.shortest(0.95).low).toBeLessThan(0.5);
      expect(Math.abs(output.shortest(0.95).high - 149.8)).toBeLessThan(1.5);
    }
  });
});

group('clause 9.5 and GUM H.1, end gauge of 50 mm (nm, K)', { tags: 'long' }, () => {
  type Gauge = Readonly<
    Record<'standard' | 'd0' | 'd1' | 'd2' | 'alpha' | 'dAlpha' | 'dTheta' | 'theta0' | 'delta', number>
  >;
  const length = ({ standard, d0, d1, d2, alpha, dAlpha, dTheta, theta0, delta }: Gauge) =>
    standard + d0 + d1 + d2 - standard * (dAlpha * (theta0 + delta) + alpha * dTheta);
  const normal = (mean: number, standardUncertainty: number): Distribution => ({
    kind: 'normal',
    mean,
    standardUncertainty,
  });
  const table = {
    standard: normal(50_000_623, 25),
    d0: normal(215, 5.8),
    d1: normal(0, 3.9),
    d2: normal(0, 6.7),
    alpha: normal(11.5e-6, 2e-6 / Math.sqrt(3)),
    dAlpha: normal(0, 1e-6 / Math.sqrt(3)),
    dTheta: normal(0, 0.05 / Math.sqrt(3)),
    theta0: normal(-0.1, 0.2),
    delta: normal(0, 0.5 / Math.sqrt(2)),
  };

  test('H.1.4: l = 50 000 838 nm, to first order u = 32 nm', () => {
    const fixed = { theta: -0.1, standard: 50_000_623, alpha: 11.5e-6 };
    const output = propagate({
      inputs: table,
      model: ({ standard, d0, d1, d2, dAlpha, dTheta }) =>
        standard + d0 + d1 + d2 - fixed.standard * (dAlpha * fixed.theta + fixed.alpha * dTheta),
      draws,
      seed: 'H.1.4',
    });
    expect(output.mean).toBeCloseTo(50_000_838, 0);
    // 31.66 unrounded.
    expect(Math.round(output.standardUncertainty)).toBe(32);
  });

  test('H.1.7: with the terms of second order u = 34 nm', () => {
    const output = propagate({ inputs: table, model: length, draws, seed: 'H.1.7' });
    expect(Math.round(output.standardUncertainty)).toBe(34);
  });

  test('9.5: with t, arcsine and curvilinear trapezoidal inputs u = 36 nm, shortest 99 % interval [745, 932] nm', () => {
    const t = (mean: number, scale: number, degreesOfFreedom: number): Distribution => ({
      kind: 'studentT',
      mean,
      scale,
      degreesOfFreedom,
    });
    const output = propagate({
      inputs: {
        standard: t(50_000_623, 25, 18),
        d0: t(215, 6, 24),
        d1: t(0, 4, 5),
        d2: t(0, 7, 8),
        alpha: { kind: 'rectangular', low: 9.5e-6, high: 13.5e-6 },
        dAlpha: { kind: 'curvilinearTrapezoid', low: -1e-6, high: 1e-6, limitUncertainty: 0.1e-6 },
        dTheta: { kind: 'curvilinearTrapezoid', low: -0.05, high: 0.05, limitUncertainty: 0.025 },
        theta0: normal(-0.1, 0.2),
        delta: { kind: 'arcsine', low: -0.5, high: 0.5 },
      },
      model: length,
      draws,
      seed: '9.5',
    });
    expect(Math.round(output.mean - 50_000_000)).toBe(838);
    expect(Math.round(output.standardUncertainty)).toBe(36);
    expect(Math.abs(output.shortest(0.99).low - 50_000_745)).toBeLessThan(4);
    expect(Math.abs(output.shortest(0.99).high - 50_000_932)).toBeLessThan(4);
  });
});

test('clause 6.4.5: a triangular distribution has a standard deviation of half its width over √6', () => {
  const output = propagate({
    inputs: { x: { kind: 'triangular', low: 2, high: 4 } },
    model: ({ x }) => x,
    draws,
    seed: '6.4.5',
  });
  expect(output.mean).toBeCloseTo(3, 2);
  expect(output.standardUncertainty).toBeCloseTo(1 / Math.sqrt(6), 2);
});
