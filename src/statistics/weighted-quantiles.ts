/** Narrow enough for an interval's end to a few thousandths of its width, were it a thousandth of the whole range. */
const bins = 4096;

/**
 * The quantiles of weighted values, by a histogram over their range: to a bin's width, and even within a bin.
 * The weights are 0 or more and need not add up to 1; there is at least one value.
 */
export function weightedQuantiles(
  values: readonly number[],
  weights: readonly number[],
): (probability: number) => number {
  const { low, high } = endsOf(values);
  const width = (high - low) / bins;
  const masses = new Float64Array(bins);
  let total = 0;
  for (let index = 0; index < values.length; index++) {
    const place = Math.floor(((values[index] ?? low) - low) / width);
    const bin = Math.min(bins - 1, place || 0);
    const weight = weights[index] ?? 0;
    masses[bin] = (masses[bin] ?? 0) + weight;
    total += weight;
  }
  return (probability) => {
    let rest = probability * total;
    for (let bin = 0; bin < bins; bin++) {
      const mass = masses[bin] ?? 0;
      if (mass > 0 && rest <= mass) return low + width * (bin + rest / mass);
      rest -= mass;
    }
    return high;
  };
}

function endsOf(values: readonly number[]): { readonly low: number; readonly high: number } {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return { low, high };
}
