import { resolve } from 'node:path';
import type { BenchProblem } from '../../bench/bench-problem.ts';
import type { Method, MethodName } from '../../bench/method.ts';
import { benchMethods } from '../../bench/methods.ts';
import { readBenchSheet } from '../../bench/sheet/bench-sheet.ts';
import type { Observations } from '../../bench/sheet/observations.ts';
import type { Kind } from '../../registry/kind.ts';
import { failure, type Result, success } from '../../result.ts';
import { dimensionInfo } from '../../units/dimension.ts';
import { readSheetText } from '../reduce/reduce-sheet.ts';

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

/** Reads the sheet that `--from` names and holds its columns against the method. */
export function readSheetFor(
  kind: Kind,
  { from, inline, method: named }: SheetRequest,
  cwd: string,
): Result<BenchSheet | null, string> {
  if (from === undefined) return success(null);
  if (kind !== 'trial') return failure(`--from starts a trial; a ${kind} has no readings.`);
  const absolute = resolve(cwd, from);
  const text = readSheetText(absolute, from);
  if (!text.ok) return failure(`${text.error.reason} ${text.error.help}`);
  const candidates = named === null ? Object.values(benchMethods) : [benchMethods[named]];
  const read = candidates.map((method) => ({ method, observations: readBenchSheet(text.value, method) }));
  const fitting = read.flatMap(({ method, observations }) =>
    observations.ok ? [{ method, readings: observations.value }] : [],
  );
  const [first, second] = fitting;
  if (first === undefined) return failure(problemText(from, fewestProblems(read)));
  if (second !== undefined) {
    const names = fitting.map(({ method }) => method.method).join(', ');
    return failure(`The columns of ${from} fit several methods: ${names}. Name one with --method.`);
  }
  const { method, readings } = first;
  const written = inlineReadings(method, readings);
  return success({
    absolute,
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

function problemText(from: string, problems: readonly BenchProblem[]): string {
  return problems
    .map(({ message, help, row }) => `${from}${row === undefined ? '' : `:${row}`}: ${message}; ${help}`)
    .join('\n');
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
