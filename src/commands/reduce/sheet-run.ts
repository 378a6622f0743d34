import type { BenchRun, Fact, FactValue } from '../../bench/facts/fact.ts';
import type { Method } from '../../bench/method.ts';
import { allFacts } from '../../bench/method-facts.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import { parseQuantity } from '../../units/parse-quantity.ts';
import { usage } from '../usage.ts';

/** What the options of the command line say of a bare sheet's run; `written` by flag. */
export function sheetRun(
  method: Method,
  written: Readonly<Record<string, string | undefined>>,
): Result<BenchRun, Problem> {
  const foreign = foreignFlag(method, written);
  if (foreign !== null) return foreign;
  const known: [string, FactValue][] = [];
  for (const [name, fact] of Object.entries(method.facts)) {
    const text = written[fact.flag];
    if (text === undefined) {
      if (method.requiredFacts.includes(name)) return missing(fact);
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
): ReturnType<typeof usage> | null {
  const known = new Set(Object.values(facts).map(({ flag }) => flag));
  const foreign = allFacts.find(({ flag }) => written[flag] !== undefined && !known.has(flag));
  if (foreign === undefined) return null;
  const flags = [...known].map((flag) => `--${flag}`).join(', ');
  const help = flags === '' ? 'Leave it out.' : `Leave it out; it takes ${flags}.`;
  return usage(`A ${method} has no --${foreign.flag}`, help);
}

function missing({ flag, example }: Fact) {
  return usage(`A bare sheet needs --${flag}`, `Add, for instance: --${flag} "${example}"`);
}

function factValue({ flag, form, example }: Fact, text: string): Result<FactValue, Problem> {
  if (form === 'wholeNumber') {
    return /^\d{1,3}$/.test(text)
      ? success(Number(text))
      : usage(
          `--${flag}: "${text.slice(0, 40)}" is no whole number`,
          `Write, for instance: --${flag} ${example}`,
        );
  }
  if ('choices' in form) {
    return form.choices.includes(text)
      ? success(text)
      : usage(
          `--${flag}: "${text.slice(0, 40)}" is none of its choices`,
          `Write one of ${form.choices.join(', ')}.`,
        );
  }
  const quantity = parseQuantity(text, form.dimension);
  if (quantity.ok) return success(quantity.value.value);
  const { code, message, help } = quantity.error;
  return refusal(code, `--${flag}: ${message}`, help);
}
