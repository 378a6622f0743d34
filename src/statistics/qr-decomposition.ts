import { euclideanNorm } from './euclidean-norm.ts';

/** A matrix with at least as many rows as columns as Q times an upper triangle. */
interface QrDecomposition {
  /** The square upper triangle R. */
  readonly upper: readonly (readonly number[])[];
  /** The smallest part of a column, relative to its length, that the columns before it do not explain; 0 to 1. */
  readonly independence: number;
  /** The leading entries of Qᵀ times a vector of as many entries as the matrix has rows. */
  applyTranspose(vector: readonly number[]): number[];
}

interface Reflector {
  readonly column: number;
  readonly vector: readonly number[];
}

/** QR decomposition by Householder reflections (Golub and Van Loan, Matrix Computations, 4th ed., algorithm 5.2.1). */
export function householderQr(matrix: readonly (readonly number[])[]): QrDecomposition {
  const columns = matrix[0]?.length ?? 0;
  const work = Array.from({ length: columns }, (_, column) => matrix.map((row) => row[column] ?? 0));
  const norms = work.map(euclideanNorm);
  const reflectors: Reflector[] = [];
  for (let column = 0; column < columns; column++) {
    const reflector = reflectorFor(work[column] ?? [], column);
    reflectors.push(reflector);
    for (let other = column; other < columns; other++) reflect(work[other] ?? [], reflector);
  }
  const upper = Array.from({ length: columns }, (_, row) => work.map((column) => column[row] ?? 0));
  return {
    upper,
    independence: Math.min(...upper.map((row, index) => Math.abs(row[index] ?? 0) / (norms[index] || 1))),
    applyTranspose: (vector) => {
      const cells = [...vector];
      for (const reflector of reflectors) reflect(cells, reflector);
      return cells.slice(0, columns);
    },
  };
}

/** Solves R x = b for an upper triangle R by back substitution. */
export function solveUpper(upper: readonly (readonly number[])[], right: readonly number[]): number[] {
  const solution = [...right];
  for (let row = upper.length - 1; row >= 0; row--) {
    const cells = upper[row] ?? [];
    let rest = solution[row] ?? 0;
    for (let column = row + 1; column < upper.length; column++) {
      rest -= (cells[column] ?? 0) * (solution[column] ?? 0);
    }
    solution[row] = rest / (cells[row] ?? Number.NaN);
  }
  return solution;
}

/** The unit vector whose reflection zeroes a column below its diagonal; the sign avoids cancellation. */
function reflectorFor(cells: readonly number[], column: number): Reflector {
  const tail = cells.slice(column);
  const norm = euclideanNorm(tail);
  const head = tail[0] ?? 0;
  tail[0] = head + (head < 0 ? -norm : norm);
  const length = euclideanNorm(tail);
  return { column, vector: length === 0 ? tail : tail.map((cell) => cell / length) };
}

/** Reflects a column where it stands: a copy a reflection was most of the work. */
function reflect(cells: number[], { column, vector }: Reflector): void {
  let projection = 0;
  for (let index = 0; index < vector.length; index++) {
    projection += (vector[index] ?? 0) * (cells[column + index] ?? 0);
  }
  for (let index = 0; index < vector.length; index++) {
    cells[column + index] = (cells[column + index] ?? 0) - 2 * projection * (vector[index] ?? 0);
  }
}
