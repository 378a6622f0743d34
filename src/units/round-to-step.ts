/** Relative slack by which a value that is a whole number of steps but for floating point still counts as one. */
const slack = 1e-9;

/**
 * The largest multiple of a step that is not above a value: the safe side for speeds, flows and accelerations.
 * A value smaller than one step is rounded to a tenth of the step and so on, so that no positive value becomes zero.
 */
export function roundDown(value: number, step: number): number {
  if (value <= 0) return 0;
  const steps = Math.floor((value / step) * (1 + slack));
  return steps > 0 ? clean(steps * step) : roundDown(value, step / 10);
}

/** The smallest multiple of a step that is not below a value: the safe side for lengths that must be there. */
export function roundUp(value: number, step: number): number {
  return clean(Math.ceil((value / step) * (1 - slack)) * step);
}

/** A number without the last digits that binary fractions leave, so that 3 × 0.1 reads 0.3. */
export function clean(value: number): number {
  return Number(value.toPrecision(12));
}
