const roots = [2, 3, 5, 7].map(Math.sqrt);

/**
 * A coordinate of a point of a sequence that fills the unit cube evenly: multiples of the square root of a prime,
 * without their whole part (Weyl; Niederreiter, Random Number Generation and Quasi-Monte Carlo Methods, 1992,
 * chapter 3). Up to four dimensions; NaN beyond.
 */
export function evenlySpread(index: number, dimension: number): number {
  const multiple = index * (roots[dimension] ?? Number.NaN);
  return multiple - Math.floor(multiple);
}
