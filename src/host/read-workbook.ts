import { unzipSync } from 'fflate';
import readSheets, { type CellValue } from 'read-excel-file/universal';
import type { BenchProblem } from '../bench/bench-problem.ts';
import type { SheetCell, SheetRow } from '../bench/sheet/sheet-row.ts';
import {
  type FewestRows,
  mostOfSheet,
  otherKind,
  type SheetTable,
  tableOf,
} from '../bench/sheet/sheet-table.ts';
import { failure, type Result, success } from '../result.ts';
import { nearestWord } from '../text/nearest-word.ts';
import { quote } from '../text/quote.ts';

/** The table of a workbook, and what was understood beside its cells. */
interface Workbook {
  readonly table: SheetTable;
  readonly remarks: readonly string[];
}

/** More than a workbook with a bench sheet needs, little enough to unpack: files, bytes of all, rows and columns of a sheet. */
const most = { files: 500, bytes: 16_000_000, ...mostOfSheet } as const;

/** Reads a sheet of a workbook (.xlsx): the one that is named, or the only one with rows in it. */
export async function readWorkbook(
  bytes: Uint8Array,
  wanted?: string,
  fewestRows?: FewestRows,
): Promise<Result<Workbook, readonly BenchProblem[]>> {
  const parts = unpacked(bytes);
  if (!parts.ok) return parts;
  const sheets = await sheetsOf(bytes);
  if (sheets === null) return failure([broken()]);
  const chosen = chosenSheet(sheets, wanted);
  if (!chosen.ok) return chosen;
  const table = tableOf(chosen.value.rows, null, fewestRows);
  if (!table.ok) return table;
  const name = sheets.length > 1 ? [`sheet "${quote(chosen.value.name)}" of ${sheets.length}`] : [];
  const cached = parts.value.hasFormulas ? ['formulas read as their saved values'] : [];
  return success({ table: table.value, remarks: [...name, ...cached] });
}

/** What the parts of the archive show before they are read as a workbook. */
interface Parts {
  readonly hasFormulas: boolean;
}

function unpacked(bytes: Uint8Array): Result<Parts, readonly BenchProblem[]> {
  let [files, size, isWorkbook] = [0, 0, false];
  try {
    const parts = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        files += 1;
        size += originalSize;
        isWorkbook ||= name === 'xl/workbook.xml';
        return files <= most.files && size <= most.bytes && name.endsWith('.xml');
      },
    });
    if (files > most.files || size > most.bytes) return failure([tooMuch()]);
    if (!isWorkbook) return failure([otherKind('a zip archive with no workbook in it')]);
    const texts = Object.values(parts).map((part) => new TextDecoder().decode(part));
    if (!texts.every(isSmall)) return failure([tooWide()]);
    return success({
      hasFormulas: texts.some((text) => text.includes('sheetData') && /<(?:\w+:)?f[\s>/]/.test(text)),
    });
  } catch {
    return failure([broken()]);
  }
}

/** Whether all cells lie where a bench sheet has them: a reader makes room for every cell up to the last. */
function isSmall(part: string): boolean {
  if (!part.includes('sheetData')) return true;
  if ((part.match(/<(?:\w+:)?row[\s/>]/g)?.length ?? 0) > most.rows) return false;
  return [...part.matchAll(/[\s"']r\s*=\s*(?:"([^"]*)"|'([^']*)')/g)].every(([, double, single]) => {
    const [, letters, digits] = /^([A-Z]{0,2})([1-9]\d{0,3})$/.exec(double ?? single ?? '') ?? [];
    const column = [...(letters ?? '')].reduce((sum, letter) => 26 * sum + letter.charCodeAt(0) - 64, 0);
    return digits !== undefined && Number(digits) <= most.rows && column <= most.columns;
  });
}

interface NamedSheet {
  readonly name: string;
  readonly rows: readonly SheetRow[];
}

async function sheetsOf(bytes: Uint8Array): Promise<readonly NamedSheet[] | null> {
  try {
    const buffer = new Uint8Array(bytes).buffer;
    const sheets = await readSheets(buffer);
    return sheets.map(({ sheet, data }) => ({
      name: sheet,
      rows: data.map((cells, index) => ({ cells: cells.map(cellOf), row: index + 1 })),
    }));
  } catch {
    // The reader throws at whatever a stranger's workbook breaks.
    return null;
  }
}

function cellOf(cell: CellValue | null): SheetCell {
  if (cell === null) return '';
  if (cell instanceof Date) return Number.isNaN(cell.getTime()) ? 'a date' : cell.toISOString();
  return typeof cell === 'number' ? cell : String(cell).trim();
}

function chosenSheet(
  sheets: readonly NamedSheet[],
  wanted: string | undefined,
): Result<NamedSheet, readonly BenchProblem[]> {
  const names = sheets.map(({ name }) => name);
  const filled = sheets.filter(({ rows }) => rows.some(({ cells }) => cells.some((cell) => cell !== '')));
  const [first, ...others] = wanted === undefined ? filled : sheets.filter(({ name }) => name === wanted);
  if (first !== undefined && others.length === 0) return success(first);
  const list = (first === undefined ? names : filled.map(({ name }) => name))
    .slice(0, 10)
    .map((name) => `"${quote(name)}"`);
  if (wanted !== undefined) {
    const near = nearestWord(wanted, names);
    const help = near === null ? `its sheets are ${list.join(', ')}` : `did you mean "${quote(near)}"?`;
    return failure([{ code: 'otherSheet', message: `the workbook has no sheet "${quote(wanted)}"`, help }]);
  }
  if (first === undefined) {
    return failure([
      {
        code: 'emptySheet',
        message: 'the workbook is empty',
        help: 'write one row per reading below a header of `name [unit]`',
      },
    ]);
  }
  return failure([
    {
      code: 'otherSheet',
      message: `the workbook has ${filled.length} sheets with something in them: ${list.join(', ')}`,
      help: 'name the one with the readings with --sheet',
    },
  ]);
}

function broken(): BenchProblem {
  return otherKind('a broken workbook, or one that cannot be read');
}

function tooMuch(): BenchProblem {
  return {
    code: 'sheetTooLarge',
    message: `the workbook unpacks to more than ${most.bytes / 1e6} MB or ${most.files} files`,
    help: 'check that it is a bench sheet; save the sheet with the readings alone, or as CSV',
  };
}

function tooWide(): BenchProblem {
  return {
    code: 'sheetTooLarge',
    message: `the workbook has cells beyond row ${most.rows} or column ${most.columns}`,
    help: 'delete what stands far from the readings, or save the sheet as CSV',
  };
}
