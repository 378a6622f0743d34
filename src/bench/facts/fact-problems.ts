import type { Profile } from '../../registry/profile.ts';
import { isObject } from '../../registry/shape.ts';
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

/** Facts that a trial states in a form that its schema refuses, so that they are not in its data. */
export function unreadFacts(
  { data, written }: Pick<Profile<'trial'>, 'data' | 'written'>,
  facts: Facts,
): BenchProblem[] {
  return Object.values(facts).flatMap(({ place, what, example, statedIn }) => {
    const keys = place.match(/\w+/g) ?? [];
    if (statedIn === 'filament' || valueAt(written, keys) === undefined || valueAt(data, keys) !== undefined)
      return [];
    return [
      {
        code: 'badSetting',
        message: `\`${place}\` cannot be read as it is written (${what})`,
        help: `correct it, such as ${example}; \`meltbounds check\` says what is wrong`,
      },
    ];
  });
}

/** What stands at a place of a document, by its keys. */
export function valueAt(data: unknown, path: readonly string[]): unknown {
  return path.reduce<unknown>((value, key) => (isObject(value) ? value[key] : undefined), data);
}

function shown(value: number, { form }: Fact): string {
  if (!Number.isFinite(value)) return String(value);
  return typeof form === 'object' && 'dimension' in form
    ? formatQuantity(value, form.dimension, { significantDigits: 6 })
    : formatNumber(value);
}
