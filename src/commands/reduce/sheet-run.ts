import { type BenchRun, factTexts, type MeterClass, type RunFact } from '../../bench/bench-run.ts';
import type { Method } from '../../bench/method.ts';
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
  const facts: [RunFact, number | MeterClass][] = [];
  for (const fact of method.takes) {
    const text = written[factTexts[fact].flag];
    if (text === undefined) {
      if (method.needs.includes(fact)) return failure(missing(fact));
      continue;
    }
    const value = factValue(fact, text);
    if (!value.ok) return value;
    facts.push([fact, value.value]);
  }
  return success(Object.fromEntries(facts) as BenchRun); // entries lose which key has which type
}

function foreignFlag(
  { method, takes }: Method,
  written: Readonly<Record<string, string | undefined>>,
): CannotReduce | null {
  const known = new Set(takes.map((fact) => factTexts[fact].flag));
  const foreign = Object.values(factTexts).find(
    ({ flag }) => written[flag] !== undefined && !known.has(flag),
  );
  if (foreign === undefined) return null;
  const flags = [...known].map((flag) => `--${flag}`).join(', ');
  return {
    reason: `A ${method} has no --${foreign.flag}.`,
    help: flags === '' ? 'Leave it out.' : `Leave it out; it takes ${flags}.`,
  };
}

function missing(fact: RunFact): CannotReduce {
  const { flag, example } = factTexts[fact];
  return { reason: `A bare sheet needs --${flag}.`, help: `Add, for instance: --${flag} "${example}"` };
}

function factValue(fact: RunFact, text: string): Result<number | MeterClass, CannotReduce> {
  const { flag, form, example } = factTexts[fact];
  if (form === 'wholeNumber') {
    return /^\d{1,3}$/.test(text)
      ? success(Number(text))
      : failure({
          reason: `--${flag}: "${text.slice(0, 40)}" is no whole number.`,
          help: `Write, for instance: --${flag} ${example}`,
        });
  }
  if ('choices' in form) {
    const choice = meterClasses.find((one) => one === text);
    return choice === undefined
      ? failure({
          reason: `--${flag}: "${text.slice(0, 40)}" is none of its choices.`,
          help: `Write one of ${form.choices.join(', ')}.`,
        })
      : success(choice);
  }
  const quantity = parseQuantity(text, form.dimension);
  if (quantity.ok) return success(quantity.value.value);
  return failure({ reason: `--${flag}: ${quantity.error.message}`, help: quantity.error.help });
}

const meterClasses: readonly MeterClass[] = ['class1', 'class2', 'unclassed'];
