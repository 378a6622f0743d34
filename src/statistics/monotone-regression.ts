/**
 * Weighted least-squares fit of a non-decreasing sequence by pooling adjacent violators
 * (Barlow, Bartholomew, Bremner, Brunk, Statistical Inference under Order Restrictions, 1972, section 1.2).
 * Values in any unit, weights positive and as many as the values.
 */
export function nonDecreasingFit(values: readonly number[], weights: readonly number[]): number[] {
  if (values.length !== weights.length) throw new RangeError('one weight per value');
  const pools: { mean: number; weight: number; size: number }[] = [];
  for (const [index, value] of values.entries()) {
    let pool = { mean: value, weight: weights[index] ?? 0, size: 1 };
    if (!(pool.weight > 0)) throw new RangeError('weights must be positive');
    for (let last = pools.at(-1); last !== undefined && last.mean > pool.mean; last = pools.at(-1)) {
      const weight = last.weight + pool.weight;
      const mean = (last.mean * last.weight + pool.mean * pool.weight) / weight;
      pool = { mean, weight, size: last.size + pool.size };
      pools.pop();
    }
    pools.push(pool);
  }
  return pools.flatMap((pool) => Array<number>(pool.size).fill(pool.mean));
}
