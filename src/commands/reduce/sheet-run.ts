import type { BenchRun, Fact, FactValue } from '../../bench/facts/fact.ts';
import type { Method } from '../../bench/method.ts';
import { allFacts } from '../../bench/methods.ts';
import { failure, type Result, success } from '../../result.ts';
import { parseQuantity } from '../../units/parse-quantity.ts';
import type { CannotReduce } from './cannot-reduce.ts';

/** What the options of the command line say of a bare sheet's run; `written` by flag. */
export function sheetRun(
  method: Method,
  written: Readonly<Record<string, string | undefined>>,
): Result<BenchRun, CannotReduce> {
  const foreign = foreignFlag(method, written);
  if (foreign !== null) return failure(foreign);
  const known: [string, FactValue][] = [];
  for (const [name, fact] of Object.entries(method.facts)) {
    const text = written[fact.flag];
    if (text === undefined) {
      if (method.requiredFacts.includes(name)) return failure(missing(fact));
      continue;
    }
    const value = factValue(fact, text);
    if (!value.ok) return value;
    known.push([name, value.value]);
  }
  return success(Object.fromEntries(known));
}

function foreignFlag(
  { method, facts }: Method,
  written: Readonly<Record<string, string | undefined>>,
): CannotReduce | null {
  const known = new Set(Object.values(facts).map(({ flag }) => flag));
  const foreign = allFacts.find(({ flag }) => written[flag] !== undefined && !known.has(flag));
  if (foreign === undefined) return null;
  const flags = [...known].map((flag) => `--${flag}`).join(', ');
  return {
    reason: `A ${method} has no --${foreign.flag}.`,
    help: flags === '' ? 'Leave it out.' : `Leave it out; it takes ${flags}.`,
  };
}

function missing({ flag, example }: Fact): CannotReduce {
  return { reason: `A bare sheet needs --${flag}.`, help: `Add, for instance: --${flag} "${example}"` };
}

function factValue({ flag, form, example }: Fact, text: string): Result<FactValue, CannotReduce> {
  if (form === 'wholeNumber') {
    return /^\d{1,3}$/.test(text)
      ? success(Number(text))
      : failure({
          reason: `--${flag}: "${text.slice(0, 40)}" is no whole number.`,
          help: `Write, for instance: --${flag} ${example}`,
        });
  }
  if ('choices' in form) {
    return form.choices.includes(text)
      ? success(text)
      : failure({
          reason: `--${flag}: "${text.slice(0, 40)}" is none of its choices.`,
          help: `Write one of ${form.choices.join(', ')}.`,
        });
  }
  const quantity = parseQuantity(text, form.dimension);
  if (quantity.ok) return success(quantity.value.value);
  return failure({ reason: `--${flag}: ${quantity.error.message}`, help: quantity.error.help });
}
