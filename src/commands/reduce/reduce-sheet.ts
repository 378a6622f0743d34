import type { BenchProblem } from '../../bench/bench-problem.ts';
import { fittingMethod } from '../../bench/fitting-method.ts';
import type { Method } from '../../bench/method.ts';
import type { MethodName } from '../../bench/method-facts.ts';
import { methodOf } from '../../bench/methods.ts';
import type { Reduction } from '../../bench/reduction.ts';
import { readSheetTable } from '../../bench/sheet/bench-sheet.ts';
import type { DecimalSign } from '../../bench/sheet/number-forms.ts';
import type { SheetTable } from '../../bench/sheet/sheet-table.ts';
import { readSheetFile } from '../../host/read-sheet.ts';
import type { SheetReading } from '../../report/reduction/sheet-facts.ts';
import { type Problem, type Result, success } from '../../result.ts';
import { factsByFlag } from './reduce-options.ts';
import { sheetRun } from './sheet-run.ts';

/** How a sheet is to be read, where it does not tell that itself. */
export interface ReadingOptions {
  readonly method?: MethodName;
  readonly decimal?: keyof typeof decimalSigns;
  readonly sheet?: string;
}

/** What a bare bench sheet does not say itself, as the user writes it: how to read it, and facts by their flag. */
export type SheetOptions = ReadingOptions & Readonly<Record<string, unknown>>;

const decimalSigns = { point: '.', comma: ',' } as const satisfies Readonly<Record<string, DecimalSign>>;

/** What a bare sheet tells, and how it was understood. */
interface ReducedSheet {
  readonly reduction: Reduction;
  readonly sheet: SheetReading;
}

/** Reads and reduces a bare bench sheet. The inner problems are what is wrong with the sheet or its readings. */
export async function reduceSheet(
  path: string,
  options: SheetOptions,
  cwd: string,
): Promise<Result<Result<ReducedSheet, readonly BenchProblem[]>, Problem>> {
  const file = await readSheetFile(path, cwd, options.sheet);
  if (!file.ok) return file;
  if (!file.value.ok) return success(file.value);
  const { table } = file.value.value;
  const chosen = methodFor(table, options.method);
  if (!chosen.ok) return chosen;
  if (!chosen.value.ok) return success(chosen.value);
  const method = chosen.value.value;
  const run = sheetRun(method, writtenFacts(options));
  if (!run.ok) return run;
  const sheet = readSheetTable(table, method, decimalOf(options));
  if (!sheet.ok) return success(sheet);
  const reduced = method.reduce(sheet.value.observations, run.value);
  if (!reduced.ok) return success(reduced);
  const { encoding, remarks } = file.value.value;
  return success(success({ reduction: reduced.value, sheet: { ...sheet.value, encoding, remarks } }));
}

/** The method that the user has named, or else the one whose columns a sheet has. */
export function methodFor(
  table: SheetTable,
  named: MethodName | null | undefined,
): ReturnType<typeof fittingMethod> {
  const known: Method | null = named == null ? null : methodOf(named);
  return known === null ? fittingMethod(table) : success(success(known));
}

/** The decimal sign that the user has named. */
export function decimalOf({ decimal }: Pick<ReadingOptions, 'decimal'>): DecimalSign | undefined {
  return decimal === undefined ? undefined : decimalSigns[decimal];
}

/** The facts as they are written, by flag: the parser of the command line joins its words in camel case. */
function writtenFacts(options: SheetOptions): Record<string, string | undefined> {
  const entries = [...factsByFlag().keys()].map((flag) => {
    const value = options[flag.replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase())];
    return [flag, typeof value === 'string' ? value : undefined] as const;
  });
  return Object.fromEntries(entries);
}
