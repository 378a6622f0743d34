import { resolve } from 'node:path';
import { readBenchSheet } from '../bench/bench-sheet.ts';
import { flowLadder } from '../bench/flow-ladder.ts';
import type { Kind } from '../registry/kind.ts';
import { failure, type Result, success } from '../result.ts';
import type { Answers } from '../scaffold/answers.ts';
import { dimensionInfo } from '../units/dimension.ts';
import { readSheetText } from './reduce-sheet.ts';

/** A bench sheet that a trial starts from. */
export interface BenchSheet {
  readonly absolute: string;
  readonly text: string;
  /** What the sheet says of the trial. */
  readonly answers: Answers;
  /** The readings as the trial holds them: the name of the sheet beside it, or columns and rows. */
  readonly observations: (name: string) => unknown;
}

/** Reads the sheet that `--from` names and holds its columns against the method. */
export function readSheetFor(
  kind: Kind,
  { from, inline }: { readonly from?: string; readonly inline?: boolean },
  cwd: string,
): Result<BenchSheet | null, string> {
  if (from === undefined) return success(null);
  if (kind !== 'trial') return failure(`--from starts a trial; a ${kind} has no readings.`);
  const absolute = resolve(cwd, from);
  const text = readSheetText(absolute, from);
  if (!text.ok) return failure(`${text.error.reason} ${text.error.help}`);
  const read = readBenchSheet(text.value, flowLadder);
  if (!read.ok) {
    const lines = read.error.map(
      ({ message, help, row }) => `${from}${row === undefined ? '' : `:${row}`}: ${message}; ${help}`,
    );
    return failure(lines.join('\n'));
  }
  const { columns, rows } = read.value;
  const names = Object.keys(columns);
  const written = {
    columns: Object.fromEntries(names.map((name) => [name, canonicalUnitOf(name)])),
    rows: rows.map((_, row) => names.map((name) => columns[name]?.[row] ?? Number.NaN)),
  };
  return success({
    absolute,
    text: text.value,
    answers: { method: flowLadder.method, origin: 'bench' },
    observations: (name) => (inline ? written : { file: name }),
  });
}

/** The readings come back in canonical units. */
function canonicalUnitOf(column: string): string {
  const dimension = Object.entries(flowLadder.columns).find(([name]) => name === column)?.[1];
  return (dimension && dimensionInfo[dimension].canonicalUnit) ?? '1';
}
