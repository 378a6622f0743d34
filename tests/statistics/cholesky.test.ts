import { expect, test } from 'vitest';
import { choleskyFactor } from '../../src/statistics/cholesky.ts';

test('the factor times its transpose is the matrix', () => {
  const factor = choleskyFactor([[4], [2, 5], [-2, 1, 6]]);
  const product = factor.map((row, i) =>
    factor.slice(0, i + 1).map((other) => row.reduce((sum, cell, k) => sum + cell * (other[k] ?? 0), 0)),
  );
  expect(product.flat().map((cell) => Number(cell.toFixed(12)))).toEqual([4, 2, 5, -2, 1, 6]);
});

test('a matrix of whole numbers has its factor of whole numbers', () => {
  const factor = [[2], [6, 1], [-8, 5, 3], [4, -3, 2, 7]];
  expect(choleskyFactor([[4], [12, 37], [-16, -43, 98], [8, 21, -41, 78]])).toEqual(factor);
});

test('a singular matrix has a factor all the same', () => {
  expect(choleskyFactor([[1], [1, 1]])).toEqual([[1], [1, 1e-6]]);
});
