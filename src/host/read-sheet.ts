import type { BenchProblem } from '../bench/bench-problem.ts';
import {
  type FewestRows,
  largestSheet,
  otherKind,
  readSheetText,
  type SheetTable,
} from '../bench/sheet/sheet-table.ts';
import { failure, type Problem, type Result, success } from '../result.ts';
import { type CharacterEncoding, decodeText } from '../text/decode-text.ts';
import { isZip, kindOfBytes } from '../text/other-kind.ts';
import { readBytes } from './read-bytes.ts';

/** A bench sheet as its file holds it. */
interface SheetFile {
  readonly table: SheetTable;
  /** Null for a workbook. */
  readonly encoding: CharacterEncoding | null;
  /** The text of the file; null for a workbook. */
  readonly text: string | null;
  /** What else was understood, of a workbook. */
  readonly remarks: readonly string[];
}

/** No encoding takes more than four bytes a character, so a larger file cannot be a bench sheet. */
const sheetUse = { name: 'bench sheet', mostBytes: 4 * largestSheet } as const;

/** Reads the table in a file: text in any of the usual encodings, or a workbook, of which `sheet` names a sheet. The inner problems are those of its content. */
export async function readSheetFile(
  path: string,
  cwd: string,
  sheet?: string,
  fewestRows?: FewestRows,
): Promise<Result<Result<SheetFile, readonly BenchProblem[]>, Problem>> {
  const bytes = readBytes(path, cwd, sheetUse);
  if (!bytes.ok) return bytes;
  if (isZip(bytes.value)) {
    const { readWorkbook } = await import('./read-workbook.ts');
    const workbook = await readWorkbook(bytes.value, sheet, fewestRows);
    return success(workbook.ok ? success({ ...workbook.value, encoding: null, text: null }) : workbook);
  }
  return success(sheetOfText(bytes.value, fewestRows));
}

function sheetOfText(
  bytes: Uint8Array,
  fewestRows: FewestRows | undefined,
): Result<SheetFile, readonly BenchProblem[]> {
  const kind = kindOfBytes(bytes);
  if (kind !== null) return failure([otherKind(kind)]);
  const decoded = decodeText(bytes);
  if (decoded === null) return failure([otherKind('a file of bytes that are no text')]);
  const table = readSheetText(decoded.text, fewestRows);
  return table.ok ? success({ ...decoded, table: table.value, remarks: [] }) : table;
}
