import type { Range } from '../units/canonical.ts';

/** Where a root is thought to be, and how steeply the function rises there. */
interface RootGuess {
  readonly at: number;
  /** Above 0. */
  readonly slope: number;
}

/** Bisection alone would get from the widest bracket to the last bit of a number in that many steps. */
const mostSteps = 60;

/**
 * Where an increasing function is 0, to a function value within ± accuracy: secants, and halving of the bracket where
 * one would leave it (Press et al., Numerical Recipes, 3rd ed., 9.2 and 9.4). An end of the bracket where there is no
 * root within.
 */
export function findRoot(
  increasing: (at: number) => number,
  { low, high }: Range,
  guess: RootGuess,
  accuracy: number,
): number {
  let [below, above] = [low, high];
  let { at, slope } = guess;
  let value = increasing(at);
  for (let step = 0; step < mostSteps && Math.abs(value) > accuracy; step++) {
    if (value < 0) below = at;
    else above = at;
    const ahead = at - value / slope;
    const next = ahead > below && ahead < above ? ahead : (below + above) / 2;
    const there = increasing(next);
    const rise = (there - value) / (next - at);
    if (rise > 0) slope = rise;
    at = next;
    value = there;
  }
  return at;
}
