import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitLimitLine, type LimitPoint } from '../../../src/bench/limit-line/limit-line.ts';

function point(temperature: number, limit: number, half = 1): LimitPoint {
  return { temperature, limit, low: limit - half, high: limit + half };
}

function fitted(...points: readonly LimitPoint[]) {
  const line = fitLimitLine(points);
  if (!line.ok) throw new Error(line.error.message);
  return line.value;
}

const limits = fc.array(
  fc.record({
    temperature: fc.integer({ min: 190, max: 300 }),
    limit: fc.double({ min: 5, max: 60, noNaN: true }),
    half: fc.double({ min: 0.1, max: 3, noNaN: true }),
  }),
  { minLength: 2, maxLength: 8 },
);
const onTwoTemperatures = limits.filter(
  (list) => new Set(list.map(({ temperature }) => temperature)).size > 1,
);

describe('a line of limits', () => {
  it('through exact limits is exact', () => {
    const line = fitted(point(210, 20), point(220, 24, 0.3), point(240, 32, 2));
    expect(line.slope).toBeCloseTo(0.4, 12);
    expect(line.intercept).toBeCloseTo(-64, 9);
    expect(line.birgeRatio).toBeCloseTo(0, 9);
    expect(line.isWidened).toBe(false);
  });

  it('follows the closed form', () => {
    // Bevington and Robinson, Data Reduction and Error Analysis, 3rd ed., formulas 6.12 and 6.23.
    fc.assert(
      fc.property(onTwoTemperatures, (list) => {
        const line = fitted(...list.map(({ temperature, limit, half }) => point(temperature, limit, half)));
        const sum = (of: (x: number, y: number) => number) =>
          list.reduce(
            (total, { temperature: x, limit, half }) => total + of(x - 240, limit) / (half / 1.959964) ** 2,
            0,
          );
        const [one, x, y] = [sum(() => 1), sum((a) => a), sum((_, b) => b)];
        const [xx, xy] = [sum((a) => a * a), sum((a, b) => a * b)];
        const delta = one * xx - x * x;
        const widening = Math.max(1, line.birgeRatio ?? 1);
        expect(line.slope).toBeCloseTo((one * xy - x * y) / delta, 5);
        expect(line.slopeUncertainty / (widening * Math.sqrt(one / delta))).toBeCloseTo(1, 5);
      }),
    );
  });

  it('stays where it is when all intervals become wider alike', () => {
    fc.assert(
      fc.property(onTwoTemperatures, fc.double({ min: 0.1, max: 10, noNaN: true }), (list, factor) => {
        const before = fitted(...list.map(({ temperature, limit, half }) => point(temperature, limit, half)));
        const after = fitted(
          ...list.map(({ temperature, limit, half }) => point(temperature, limit, half * factor)),
        );
        expect(after.slope).toBeCloseTo(before.slope, 8);
        expect(after.centre.limit).toBeCloseTo(before.centre.limit, 8);
      }),
    );
  });

  it('does not depend on the order of the trials', () => {
    const points = [point(210, 20), point(220, 25, 0.3), point(240, 31, 2), point(220, 23)];
    expect(fitted(...points.toReversed()).slope).toBeCloseTo(fitted(...points).slope, 12);
  });

  it('through two limits has the uncertainty that their intervals propagate to', () => {
    const line = fitted(point(210, 20), point(230, 30));
    expect(line.birgeRatio).toBeNull();
    expect(line.residualDegreesOfFreedom).toBe(0);
    expect(line.coverageFactor).toBeCloseTo(1.96, 3);
    // u(slope) = √2·u/ΔT, with u = 1/1.96.
    expect(line.slopeUncertainty).toBeCloseTo((Math.SQRT2 * (1 / 1.959964)) / 20, 8);
  });

  it("gets wider by Birge's ratio and Student's factor when limits scatter by more than their intervals", () => {
    const line = fitted(point(210, 20), point(220, 40), point(230, 14), point(240, 36));
    expect(line.birgeRatio).toBeGreaterThan(1);
    expect(line.isWidened).toBe(true);
    // Almost all of the variance is scatter; JCGM 100:2008, table G.2: t95 is 4.30 for two degrees of freedom.
    expect(line.effectiveDegreesOfFreedom).toBeCloseTo(2, 0);
    expect(line.coverageFactor).toBeCloseTo(4.3, 0);
  });

  it('takes the scatter of several trials at one temperature into its band', () => {
    const agreeing = fitted(point(210, 20), point(210, 20), point(230, 30), point(230, 30));
    const scattered = fitted(point(210, 17), point(210, 23), point(230, 33), point(230, 27));
    expect(scattered.slope).toBeCloseTo(agreeing.slope, 12);
    expect(scattered.slopeUncertainty).toBeGreaterThan(3 * agreeing.slopeUncertainty);
  });

  it('needs two temperatures', () => {
    expect(fitLimitLine([])).toMatchObject({ ok: false, error: { code: 'oneTemperature' } });
    expect(fitLimitLine([point(230, 20), point(230, 21)])).toMatchObject({
      ok: false,
      error: { code: 'oneTemperature' },
    });
  });

  it('needs intervals with a width', () => {
    expect(fitLimitLine([point(230, 20, 0), point(240, 21)])).toMatchObject({
      ok: false,
      error: { code: 'noWidth' },
    });
  });
});
