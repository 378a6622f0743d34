import { resolve } from 'node:path';
import type { BenchProblem } from '../../bench/bench-problem.ts';
import type { Method } from '../../bench/method.ts';
import type { MethodName } from '../../bench/method-facts.ts';
import { benchMethods } from '../../bench/methods.ts';
import { readBenchSheet } from '../../bench/sheet/bench-sheet.ts';
import type { Observations } from '../../bench/sheet/observations.ts';
import { readText } from '../../host/read-text.ts';
import type { Kind } from '../../registry/kind.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import { dimensionInfo } from '../../units/dimension.ts';
import { sheetKind } from '../reduce/reduce-sheet.ts';
import { usage } from '../usage.ts';

/** A bench sheet that a trial starts from. */
export interface BenchSheet {
  readonly absolute: string;
  readonly text: string;
  /** The method whose columns it has. */
  readonly method: MethodName;
  /** The readings as the trial holds them: the name of the sheet beside it, or columns and rows. */
  readonly observations: (name: string) => unknown;
}

interface SheetRequest {
  readonly from?: string;
  readonly inline?: boolean;
  /** The method of the trial, where the user has named it; else the columns tell. */
  readonly method: MethodName | null;
}

/** Reads the sheet that `--from` names and checks its columns against the method. */
export function readSheetFor(
  kind: Kind,
  { from, inline, method: named }: SheetRequest,
  cwd: string,
): Result<BenchSheet | null, Problem> {
  if (from === undefined) return success(null);
  if (kind !== 'trial') return usage(`A ${kind} has no readings`, '--from starts a trial.');
  const text = readText(from, cwd, sheetKind);
  if (!text.ok) return text;
  const candidates = named === null ? Object.values(benchMethods) : [benchMethods[named]];
  const read = candidates.map((method) => ({ method, observations: readBenchSheet(text.value, method) }));
  const fitting = read.flatMap(({ method, observations }) =>
    observations.ok ? [{ method, readings: observations.value }] : [],
  );
  const [first, second] = fitting;
  if (first === undefined) return unreadableSheet(from, fewestProblems(read));
  if (second !== undefined) {
    const names = fitting.map(({ method }) => method.method).join(', ');
    return usage(`The columns of ${from} fit several methods: ${names}`, 'Name one with --method.');
  }
  const { method, readings } = first;
  const written = inlineReadings(method, readings);
  return success({
    absolute: resolve(cwd, from),
    text: text.value,
    method: method.method,
    observations: (name) => (inline ? written : { file: name }),
  });
}

/** What is wrong by the method that the sheet comes nearest to. */
function fewestProblems(
  read: readonly { readonly observations: Result<Observations, readonly BenchProblem[]> }[],
): readonly BenchProblem[] {
  const all = read.flatMap(({ observations }) => (observations.ok ? [] : [observations.error]));
  return all.reduce(
    (fewest, problems) => (problems.length < fewest.length ? problems : fewest),
    all[0] ?? [],
  );
}

/** All of the problems, each on a line of its own with what to do about it. */
function unreadableSheet(from: string, problems: readonly BenchProblem[]) {
  const lines = problems.map(
    ({ message, help, row }) => `${from}${row === undefined ? '' : `:${row}`}: ${message}; ${help}`,
  );
  return refusal('unreadableSheet', lines.join('\n'), 'Correct the sheet, or name its method with --method.');
}

/** Readings come in canonical units, and are written in them. */
function inlineReadings(method: Method, { columns, rows }: Observations) {
  const names = Object.keys(columns);
  return {
    columns: Object.fromEntries(names.map((name) => [name, canonicalUnitOf(method, name)])),
    rows: rows.map((_, row) => names.map((name) => columns[name]?.[row] ?? Number.NaN)),
  };
}

function canonicalUnitOf({ columns }: Method, name: string): string {
  const dimension = columns[name];
  return (dimension && dimensionInfo[dimension].canonicalUnit) ?? '1';
}
