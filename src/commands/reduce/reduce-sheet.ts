import type { BenchProblem } from '../../bench/bench-problem.ts';
import type { MethodName } from '../../bench/method-facts.ts';
import { methodNames, usualMethod } from '../../bench/method-facts.ts';
import { methodOf } from '../../bench/methods.ts';
import type { Reduction } from '../../bench/reduction.ts';
import { largestSheet, readBenchSheet } from '../../bench/sheet/bench-sheet.ts';
import { readText } from '../../host/read-text.ts';
import { type Problem, type Result, success } from '../../result.ts';
import { usage } from '../usage.ts';
import { factsByFlag } from './reduce-options.ts';
import { sheetRun } from './sheet-run.ts';

/** What a bare bench sheet does not say itself, as the user writes it: the method, and facts by their flag. */
export type SheetOptions = { readonly method?: MethodName } & Readonly<Record<string, unknown>>;

/** Bytes never outnumber characters by more than four, so a file beyond that cannot be a bench sheet. */
export const sheetKind = { name: 'bench sheet', mostBytes: 4 * largestSheet } as const;

/** Reads and reduces a bare CSV bench sheet. The inner result is what the method says of the readings. */
export function reduceSheet(
  path: string,
  options: SheetOptions,
  cwd: string,
): Result<Result<Reduction, readonly BenchProblem[]>, Problem> {
  if (options.method === undefined) {
    return usage(
      'A bare sheet does not say how it was run',
      `Add --method ${usualMethod}, or another of ${methodNames.join(', ')}.`,
    );
  }
  const method = methodOf(options.method);
  const run = sheetRun(method, writtenFacts(options));
  if (!run.ok) return run;
  const text = readText(path, cwd, sheetKind);
  if (!text.ok) return text;
  const observations = readBenchSheet(text.value, method);
  return success(observations.ok ? method.reduce(observations.value, run.value) : observations);
}

/** The facts as they are written, by flag: the parser of the command line joins its words in camel case. */
function writtenFacts(options: SheetOptions): Record<string, string | undefined> {
  const entries = [...factsByFlag().keys()].map((flag) => {
    const value = options[flag.replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase())];
    return [flag, typeof value === 'string' ? value : undefined] as const;
  });
  return Object.fromEntries(entries);
}
