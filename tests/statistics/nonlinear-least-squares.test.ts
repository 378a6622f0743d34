import { expect, test } from 'vitest';
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
