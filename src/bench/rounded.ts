/**
 * A result to six significant digits: more than any bench can tell, few enough that the last bits in which machines
 * differ do not show.
 */
export function rounded(value: number): number {
  return Number(value.toPrecision(6));
}
