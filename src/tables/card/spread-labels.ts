/**
 * Places for labels beside values on an axis: as near to their values as they can be with a gap between them, within
 * the ends of the axis. In the order of the values given.
 */
export function spreadLabels(
  values: readonly number[],
  gap: number,
  [low, high]: readonly [low: number, high: number],
): number[] {
  const order = values.map((_, index) => index).sort((a, b) => (values[a] ?? 0) - (values[b] ?? 0));
  const places: number[] = values.map(() => low);
  let least = low;
  for (const index of order) {
    places[index] = Math.max(values[index] ?? low, least);
    least = (places[index] ?? low) + gap;
  }
  let most = high;
  for (const index of order.toReversed()) {
    places[index] = Math.min(places[index] ?? high, most);
    most = (places[index] ?? high) - gap;
  }
  return places;
}
