import { expect, test } from 'vitest';
import { leastSquares } from '../../src/statistics/least-squares.ts';
import { nonlinearLeastSquares } from '../../src/statistics/nonlinear-least-squares.ts';

const approach = (x: number, [height = 0, rate = 0]: readonly number[]) => height * (1 - Math.exp(-rate * x));
const x = [0.5, 1, 2, 3, 5, 8];

test('finds the parameters that readings without scatter were made with', () => {
  const fit = nonlinearLeastSquares({
    model: approach,
    start: [1, 1],
    x,
    y: x.map((at) => approach(at, [4, 0.6])),
  });
  if (!fit.ok) throw new Error(fit.error.message);
  expect(fit.value.parameters[0]).toBeCloseTo(4, 9);
  expect(fit.value.parameters[1]).toBeCloseTo(0.6, 9);
});

test('says when the readings are too few', () => {
  const fit = nonlinearLeastSquares({ model: approach, start: [1, 1], x: [1, 2], y: [1, 2] });
  expect(fit).toMatchObject({ ok: false, error: { code: 'tooFewObservations' } });
});

test('says when the model has no value at the start', () => {
  const fit = nonlinearLeastSquares({ model: (at, [b = 0]) => Math.log(b) * at, start: [-1], x, y: x });
  expect(fit).toMatchObject({ ok: false, error: { code: 'notFinite' } });
});

test('says when the readings cannot tell two parameters apart', () => {
  const fit = nonlinearLeastSquares({
    model: (at, [one = 0, other = 0]) => (one + other) * at,
    start: [1, 2],
    x,
    y: [1, 2, 4, 7, 9, 17],
  });
  expect(fit).toMatchObject({ ok: false, error: { code: 'dependentParameters' } });
});

test('says when the best curve lies at no finite parameters', () => {
  const fit = nonlinearLeastSquares({
    model: (_, [b = 0]) => Math.exp(-b),
    start: [0],
    x,
    y: x.map(() => -1),
  });
  expect(fit.ok).toBe(false);
});

test('a straight line is the one of linear least squares', () => {
  const y = [2.1, 2.9, 5.2, 6.8, 11.3, 16.9];
  const design = x.map((at) => [1, at]);
  const linear = leastSquares(design, y);
  for (const start of [
    [1, 1],
    [0, 0],
    [-300, 0.001],
  ]) {
    const fit = nonlinearLeastSquares({ model: (at, [a = 0, b = 0]) => a + b * at, start, x, y });
    if (!fit.ok || !linear.ok) throw new Error('no fit');
    const { value } = fit;
    for (const index of [0, 1]) {
      expect(value.parameters[index]).toBeCloseTo(linear.value.coefficients[index]!, 7);
      expect(value.standardErrors[index]).toBeCloseTo(linear.value.standardErrors[index]!, 7);
    }
    expect(value.degreesOfFreedom).toBe(4);
    expect(value.residualStandardDeviation).toBeCloseTo(Math.sqrt(value.residualSumOfSquares / 4), 9);
  }
});

test('one observation more than parameters is enough, none more is not', () => {
  const model = (at: number, [slope = 0]: readonly number[]) => slope * at;
  expect(nonlinearLeastSquares({ model, start: [1], x: [1, 2], y: [2, 4.1] }).ok).toBe(true);
  expect(nonlinearLeastSquares({ model, start: [1], x: [1], y: [2] }).ok).toBe(false);
});

test('a curve without parameters is refused, and every refusal says what to do', () => {
  const without = nonlinearLeastSquares({ model: (at) => at, start: [], x, y: x });
  expect(without).toMatchObject({ ok: false, error: { code: 'tooFewObservations' } });
  const flat = nonlinearLeastSquares({
    model: (_, [b = 0]) => Math.exp(-b),
    start: [0],
    x,
    y: x.map(() => -1),
  });
  const alike = nonlinearLeastSquares({
    model: (at, [one = 0, other = 0]) => (one + other) * at,
    start: [1, 2],
    x,
    y: [1, 2, 4, 7, 9, 17],
  });
  const nowhere = nonlinearLeastSquares({ model: () => Number.NaN, start: [1], x, y: x });
  for (const fit of [without, flat, alike, nowhere]) {
    if (fit.ok) throw new Error('a fit');
    expect(fit.error.message.length).toBeGreaterThan(10);
    expect(fit.error.help).toMatch(/\.$/);
  }
});

test.each([
  [100, 0.01],
  [1, 5],
  [0, 0.1],
])('comes to the same curve from a start of %f, %f', (height, rate) => {
  const y = [1.1, 1.75, 2.9, 3.2, 3.9, 3.95];
  const near = nonlinearLeastSquares({ model: approach, start: [4, 0.6], x, y });
  const far = nonlinearLeastSquares({ model: approach, start: [height, rate], x, y });
  if (!near.ok || !far.ok) throw new Error('no fit');
  expect(far.value.parameters[0]).toBeCloseTo(near.value.parameters[0]!, 5);
  expect(far.value.parameters[1]).toBeCloseTo(near.value.parameters[1]!, 5);
});

// Moré's scaled steps are the same in any unit; powers of two change no digit.
test.each([2 ** 20, 2 ** -20])(
  'a parameter in a unit that is %f times as large takes the same way',
  (unit) => {
    const y = [1.1, 1.75, 2.9, 3.2, 3.9, 3.95];
    const fitted = (scale: number) => {
      const heights: number[] = [];
      const model = (at: number, [height = 0, rate = 0]: readonly number[]) => {
        heights.push(height);
        return approach(at, [height, rate * scale]);
      };
      const fit = nonlinearLeastSquares({ model, start: [100, 0.01 / scale], x, y });
      if (!fit.ok) throw new Error(fit.error.message);
      return { heights, fit: fit.value };
    };
    const [plain, scaled] = [fitted(1), fitted(unit)];
    expect(scaled.heights).toEqual(plain.heights);
    expect(scaled.fit.parameters[1]! * unit).toBe(plain.fit.parameters[1]);
    expect(scaled.fit.standardErrors[1]! * unit).toBe(plain.fit.standardErrors[1]);
  },
);

test('finds a parameter of quite another size than the start, with the error of its slope', () => {
  const [sizes, y] = [
    [1, 2, 3],
    [8.1, 15.9, 24.1],
  ];
  const cube = (at: number, [edge = 0]: readonly number[]) => edge ** 3 * at;
  const fit = nonlinearLeastSquares({ model: cube, start: [1e7], x: sizes, y });
  const linear = leastSquares(
    sizes.map((at) => [at]),
    y,
  );
  if (!fit.ok || !linear.ok) throw new Error('no fit');
  const edge = Math.cbrt(linear.value.coefficients[0]!);
  expect(fit.value.parameters[0]! / edge).toBeCloseTo(1, 8);
  const error = linear.value.standardErrors[0]! / (3 * edge ** 2);
  expect(fit.value.standardErrors[0]! / error).toBeCloseTo(1, 6);
});

/** A valley that is as narrow as it is steep, bent like Rosenbrock's, with its lowest place at 1, 1. */
function alongValley(steepness: number) {
  let calls = 0;
  const model = (at: number, [one = 0, other = 0]: readonly number[]) => {
    calls += 1;
    return [steepness * (other - one * one), one, 0][at] ?? Number.NaN;
  };
  const fit = nonlinearLeastSquares({ model, start: [-1, 1], x: [0, 1, 2], y: [0, 1, 0] });
  return { fit, calls };
}

test('goes along a bent valley to its lowest place, and gives up where it is so narrow that it creeps', () => {
  const { fit } = alongValley(100);
  if (!fit.ok) throw new Error(fit.error.message);
  expect(fit.value.parameters[0]).toBeCloseTo(1, 9);
  expect(fit.value.parameters[1]).toBeCloseTo(1, 9);
  const narrow = alongValley(1e6);
  expect(narrow.fit).toMatchObject({ ok: false, error: { code: 'notConverged' } });
  // Three observations, each asked five times an iteration, and 2000 of those.
  expect(narrow.calls).toBeLessThan(15 * 2002);
});

test('gives up at once where the model has a value at the start alone', () => {
  let calls = 0;
  const alone = (at: number, [slope = 0]: readonly number[]) => {
    calls += 1;
    return slope === 1 ? at : Number.NaN;
  };
  const fit = nonlinearLeastSquares({ model: alone, start: [1], x, y: x });
  expect(fit).toMatchObject({ ok: false, error: { code: 'dependentParameters' } });
  expect(calls).toBeLessThan(2000);
});

test.each([
  [1, 1],
  [-300, 0.001],
  [1e5, 1e5],
])('takes the last step too, after which a line from %f, %f is exact', (...start) => {
  const y = [2.1, 2.9, 5.2, 6.8, 11.3, 16.9];
  const linear = leastSquares(
    x.map((at) => [1, at]),
    y,
  );
  const fit = nonlinearLeastSquares({ model: (at, [a = 0, b = 0]) => a + b * at, start, x, y });
  if (!fit.ok || !linear.ok) throw new Error('no fit');
  for (const [index, error] of linear.value.standardErrors.entries()) {
    const off = Math.abs(fit.value.parameters[index]! - linear.value.coefficients[index]!);
    // A gain of 1e-13 of the squares is a step of 6e-7 standard errors at most. Damping of a thousandth, over 0.22, the
    // least eigenvalue of the correlations of 1 and x, keeps back a 200th of that.
    expect(off / error).toBeLessThan(3e-9);
  }
});

test('a parameter that is stuck at a kink keeps the fit from being one, however well the other fits', () => {
  // A line for the first three observations; the last two rise on either side of 1, though differences show a slope.
  const kinked = (at: number, [slope = 0, place = 0]: readonly number[]) =>
    at <= 3 ? slope * at : 1 + Math.abs(place - 1) + 0.5 * (place - 1);
  const fit = nonlinearLeastSquares({
    model: kinked,
    start: [1, 1],
    x: [1, 2, 3, 4, 5],
    y: [1, 2, 3, 0, 0.1],
  });
  expect(fit).toMatchObject({ ok: false, error: { code: 'notConverged' } });
});
