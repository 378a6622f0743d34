import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { householderQr, solveUpper } from '../../src/statistics/qr-decomposition.ts';

const cell = fc.integer({ min: -9, max: 9 });
const matrices = fc.array(fc.tuple(cell, cell, cell), { minLength: 3, maxLength: 6 });

/** Scalar products of the columns of a matrix. */
const gram = (rows: readonly (readonly number[])[]) =>
  [0, 1, 2].map((one) =>
    [0, 1, 2].map((other) => rows.reduce((sum, row) => sum + row[one]! * row[other]!, 0)),
  );

describe('a QR decomposition', () => {
  test('keeps lengths and angles of the columns: RᵀR = AᵀA', () => {
    fc.assert(
      fc.property(matrices, (matrix) => {
        const { upper } = householderQr(matrix);
        for (const [row, cells] of gram(upper).entries()) {
          for (const [column, product] of cells.entries()) {
            expect(product).toBeCloseTo(gram(matrix)[row]![column]!, 8);
          }
        }
      }),
    );
  });

  test('leaves nothing below the diagonal, and a square triangle', () => {
    fc.assert(
      fc.property(matrices, (matrix) => {
        const { upper } = householderQr(matrix);
        expect(upper.map((row) => row.length)).toEqual([3, 3, 3]);
        for (const [row, cells] of upper.entries()) {
          for (const below of cells.slice(0, row)) expect(below).toBeCloseTo(0, 10);
        }
      }),
    );
  });

  test('turns the columns of the matrix into those of R', () => {
    const matrix = [
      [1, 2, -1],
      [-2, 0, 3],
      [4, 1, 1],
      [0, -5, 2],
    ];
    const { upper, applyTranspose } = householderQr(matrix);
    for (const column of [0, 1, 2]) {
      const turned = applyTranspose(matrix.map((row) => row[column]!));
      expect(turned).toHaveLength(3);
      for (const row of [0, 1, 2]) expect(turned[row]).toBeCloseTo(upper[row]![column]!, 12);
    }
  });

  test('of nearly a multiple of a unit vector loses no digits', () => {
    for (const sign of [1, -1]) {
      const { upper } = householderQr([
        [sign, 1],
        [1e-9, 1],
        [0, 1],
      ]);
      expect(Math.abs(upper[0]![0]!)).toBeCloseTo(1, 12);
      // What is left of (1, 1, 1) without its part along (1, 1e-9, 0).
      expect(Math.abs(upper[1]![1]!)).toBeCloseTo(Math.SQRT2, 8);
      // A column reaches along the first by their scalar product, here 1.
      const steep = householderQr([
        [sign, 0],
        [1e-9, 1e9],
        [0, 0],
      ]);
      expect(Math.abs(steep.upper[0]![1]!)).toBeCloseTo(1, 9);
    }
  });

  test.each([
    [
      'right angles',
      [
        [3, 0],
        [0, 5],
        [0, 0],
      ],
      1,
    ],
    [
      'an angle of 30°',
      [
        [1, Math.sqrt(3) * 7],
        [0, 7],
        [0, 0],
      ],
      0.5,
    ],
    [
      'a column twice',
      [
        [1, 2],
        [1, 2],
        [2, 4],
      ],
      0,
    ],
    [
      'a column of zeros',
      [
        [1, 0],
        [1, 0],
        [2, 0],
      ],
      0,
    ],
  ])('tells how independent columns are: %s', (_, matrix, independence) => {
    expect(householderQr(matrix).independence).toBeCloseTo(independence, 12);
  });
});

test('of no columns is empty', () => {
  const { upper, applyTranspose } = householderQr([]);
  expect([upper, applyTranspose([])]).toEqual([[], []]);
});

test('back substitution solves a triangle', () => {
  expect(
    solveUpper(
      [
        [2, 1, -1],
        [0, 4, 2],
        [0, 0, 5],
      ],
      [3, 14, 15],
    ),
  ).toEqual([2, 2, 3]);
  expect(solveUpper([], [])).toEqual([]);
});
