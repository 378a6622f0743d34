import { resolve } from 'node:path';
import type { BenchProblem } from '../../bench/bench-problem.ts';
import type { Method } from '../../bench/method.ts';
import type { MethodName } from '../../bench/method-facts.ts';
import { readSheetTable } from '../../bench/sheet/bench-sheet.ts';
import type { Observations } from '../../bench/sheet/observations.ts';
import { formatPlainSheet, isPlainSheet } from '../../bench/sheet/plain-sheet.ts';
import { readSheetFile } from '../../host/read-sheet.ts';
import type { Kind } from '../../registry/kind.ts';
import { type SheetFact, sheetFacts } from '../../report/reduction/sheet-facts.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import { dimensionInfo } from '../../units/dimension.ts';
import { inPrint } from '../../units/in-print.ts';
import { decimalOf, methodFor, type ReadingOptions } from '../reduce/reduce-sheet.ts';
import { usage } from '../usage.ts';

/** A bench sheet that a trial starts from. */
export interface BenchSheet {
  readonly absolute: string;
  readonly text: string;
  /** The method whose columns it has. */
  readonly method: MethodName;
  /** The readings as the trial holds them: the name of the sheet beside it, or columns and rows. */
  readonly observations: (name: string) => unknown;
  /** Lines that say how a sheet was understood that is not written as the program writes them. */
  readonly understood: readonly string[];
}

interface SheetRequest extends Omit<ReadingOptions, 'method'> {
  readonly from?: string;
  readonly inline?: boolean;
  /** The method of the trial, where the user has named it; else the columns tell. */
  readonly method: MethodName | null;
}

/** Reads the sheet that `--from` names and checks its columns against the method. */
export async function readSheetFor(
  kind: Kind,
  { from, inline, method: named, ...reading }: SheetRequest,
  cwd: string,
): Promise<Result<BenchSheet | null, Problem>> {
  if (from === undefined) return success(null);
  if (kind !== 'trial') return usage(`A ${kind} has no readings`, '--from starts a trial.');
  const file = await readSheetFile(from, cwd, reading.sheet);
  if (!file.ok) return file;
  if (!file.value.ok) return unreadableSheet(from, file.value.error);
  const { table, encoding, text, remarks } = file.value.value;
  const chosen = methodFor(table, named);
  if (!chosen.ok) return chosen;
  if (!chosen.value.ok) return unreadableSheet(from, chosen.value.error);
  const method = chosen.value.value;
  const sheet = readSheetTable(table, method, decimalOf(reading));
  if (!sheet.ok) return unreadableSheet(from, sheet.error);
  const isPlain = text !== null && isPlainSheet(sheet.value, encoding);
  const written = inlineReadings(method, sheet.value.observations);
  return success({
    absolute: resolve(cwd, from),
    text: isPlain ? text : formatPlainSheet(table, sheet.value),
    method: method.method,
    observations: (name) => (inline ? written : { file: name }),
    understood: isPlain ? [] : sheetFacts({ ...sheet.value, encoding, remarks }).map(factLine),
  });
}

function factLine([name, value]: SheetFact): string {
  return inPrint(`${name}: ${value}`);
}

/** All of the problems, each on a line of its own with what to do about it. */
function unreadableSheet(from: string, problems: readonly BenchProblem[]) {
  const lines = problems.map(
    ({ message, help, row }) => `${from}${row === undefined ? '' : `:${row}`}: ${message}; ${help}`,
  );
  return refusal(
    'unreadableSheet',
    lines.join('\n'),
    'Correct the sheet, or name its method with --method and its decimal sign with --decimal.',
  );
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
