const smallestPivot = 1e-12;

/**
 * The lower triangle L with L·Lᵀ = A of a symmetric matrix given by its lower triangle
 * (Golub and Van Loan, Matrix Computations, 4th ed., 4.2.5). Pivots are kept at 1e-12 or above, so that a singular
 * matrix, such as the covariance of too few points, still has a factor.
 */
export function choleskyFactor(lower: readonly (readonly number[])[]): number[][] {
  const factor: number[][] = [];
  for (const cells of lower) {
    const row: number[] = [];
    for (const [column, cell] of cells.entries()) {
      const above = factor[column] ?? row;
      let rest = cell;
      for (let inner = 0; inner < column; inner++) rest -= (row[inner] ?? 0) * (above[inner] ?? 0);
      row.push(above === row ? Math.sqrt(Math.max(rest, smallestPivot)) : rest / (above[column] ?? 1));
    }
    factor.push(row);
  }
  return factor;
}
