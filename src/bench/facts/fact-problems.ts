import { formatNumber, formatQuantity } from '../../units/format-quantity.ts';
import type { BenchProblem } from '../bench-problem.ts';
import type { BenchRun, Fact, Facts } from './fact.ts';

/** Facts of a run with a value that they cannot have, such as a negative resolution. */
export function factProblems(facts: Facts, run: BenchRun): BenchProblem[] {
  return Object.entries(facts).flatMap(([name, fact]) => {
    const value = run[name];
    const { possible, place, what, flag, example } = fact;
    if (typeof value !== 'number' || possible === undefined || possible.holds(value)) return [];
    const found = shown(value, fact);
    return [
      {
        code: 'badSetting',
        message: `\`${place}\` is ${found}, but it must be ${possible.words} (${what})`,
        found,
        help: `correct it in the trial, or the option --${flag} of a bare sheet, such as ${example}`,
      },
    ];
  });
}

function shown(value: number, { form }: Fact): string {
  if (!Number.isFinite(value)) return String(value);
  return typeof form === 'object' && 'dimension' in form
    ? formatQuantity(value, form.dimension, { significantDigits: 6 })
    : formatNumber(value);
}
