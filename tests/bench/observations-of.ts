import type { ReducedQuantity } from '../../src/bench/methods.ts';
import type { ReducedResult, Reduction } from '../../src/bench/reduction.ts';
import type { Observations } from '../../src/bench/sheet/observations.ts';
import type { Result } from '../../src/result.ts';

/** Observations of equally long columns, as if their rows stood in an inline list. */
export function observationsOf(columns: Readonly<Record<string, readonly number[]>>): Observations {
  const [first = []] = Object.values(columns);
  return { columns, rows: first.map((_, index) => index + 1) };
}

/** Every setting so many times over. */
export function repeated(settings: readonly number[], repeats: number): number[] {
  return settings.flatMap((setting) => Array<number>(repeats).fill(setting));
}

/** One result of a reduction that must have succeeded. */
export function resultOf(reduced: Result<Reduction, unknown>, quantity: ReducedQuantity): ReducedResult {
  if (!reduced.ok) throw new Error(JSON.stringify(reduced.error));
  const found = reduced.value.results.find((result) => result.quantity === quantity);
  if (found === undefined) throw new Error(`no ${quantity}`);
  return found;
}

/** Whether a result brackets a truth. */
export function covers({ interval: { low, high } }: ReducedResult, truth: number): boolean {
  return low !== null && high !== null && low <= truth && truth <= high;
}

/** How many of all are true, as a share. */
export function shareOf(held: readonly boolean[]): number {
  return held.filter(Boolean).length / held.length;
}
