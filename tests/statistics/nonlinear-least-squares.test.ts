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
