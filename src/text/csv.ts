import { type Problem, type Result, refusal, success } from '../result.ts';
import { printableLines } from './printable.ts';

/** A record of comma-separated values, and the line of the text on which it ends, counted from 1. */
interface CsvRecord {
  readonly cells: readonly string[];
  readonly line: number;
}

/** Why a text is no comma-separated values, and on which line. */
export type CsvProblem = Problem<'quoteInCell' | 'textBesideQuotes' | 'openQuote'> & {
  readonly line: number;
};

/** What may stand between the cells of a row. */
export const cellSeparators = [',', ';', '\t', '|'] as const;

export type CellSeparator = (typeof cellSeparators)[number];

/** How cells end and what they look like where a separator stands between them. */
interface CellPatterns {
  readonly quoted: RegExp;
  readonly bare: RegExp;
  readonly end: RegExp;
}

const patternsOf = Object.fromEntries(cellSeparators.map((sign) => [sign, cellPatterns(sign)])) as Readonly<
  Record<CellSeparator, CellPatterns>
>;

function cellPatterns(separator: CellSeparator): CellPatterns {
  const sign = separator === '|' ? '\\|' : separator;
  const blanks = separator === '\t' ? '[^\\S\\r\\n\\t]*' : '[^\\S\\r\\n]*';
  return {
    quoted: new RegExp(`${blanks}"([^"]*(?:""[^"]*)*)"${blanks}`, 'y'),
    bare: new RegExp(`[^"\\r\\n${sign}]*`, 'y'),
    end: new RegExp(`${sign}|\\r\\n?|\\n|$`, 'y'),
  };
}

/**
 * Reads comma-separated values (RFC 4180), or the same with another separator. Besides its rules a byte-order mark, any line end,
 * and blanks around cells are tolerated; rows may have any number of cells. Of records with something in them it reads one more
 * than `mostFilled`, and no further.
 */
export function readCsv(
  text: string,
  separator: CellSeparator = ',',
  mostFilled = Number.POSITIVE_INFINITY,
): Result<readonly CsvRecord[], CsvProblem> {
  const patterns = patternsOf[separator];
  const records: CsvRecord[] = [];
  let cells: string[] = [];
  let line = 1;
  let filled = 0;
  let at = text.startsWith('\uFEFF') ? 1 : 0;
  while ((at < text.length || cells.length > 0) && filled <= mostFilled) {
    const { content, raw } = cellAt(text, at, patterns);
    const end = matchAt(patterns.end, text, at + raw.length)?.[0];
    if (end === undefined) return misquoted(text, at, line, patterns);
    cells.push(content);
    line += lineEnds(raw);
    at += raw.length + end.length;
    if (end === separator) continue;
    records.push({ cells, line });
    if (cells.some((cell) => cell !== '')) filled += 1;
    cells = [];
    line += end.length > 0 ? 1 : 0;
  }
  return success(records);
}

function cellAt(
  text: string,
  at: number,
  { quoted, bare }: CellPatterns,
): { readonly content: string; readonly raw: string } {
  const found = matchAt(quoted, text, at);
  if (found !== null) return { content: (found[1] ?? '').replaceAll('""', '"'), raw: found[0] };
  const raw = matchAt(bare, text, at)?.[0] ?? '';
  return { content: raw.trim(), raw };
}

function matchAt(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

function lineEnds(raw: string): number {
  return raw.match(/\r\n?|\n/g)?.length ?? 0;
}

/** A cell that is not followed by a separator or the end of its line: what its quotation marks do wrong. */
function misquoted(
  text: string,
  at: number,
  line: number,
  patterns: CellPatterns,
): { ok: false; error: CsvProblem } {
  const close = 'Put quotation marks around whole cells only, and close each of them.';
  const quoted = matchAt(patterns.quoted, text, at);
  const { error } =
    quoted !== null
      ? refusal('textBesideQuotes', 'Text stands beside a cell in quotation marks', close)
      : text.slice(at).trimStart().startsWith('"')
        ? refusal('openQuote', 'A quotation mark is not closed', close)
        : refusal('quoteInCell', 'A quotation mark stands inside of a cell', close);
  return { ok: false, error: { ...error, line: line + lineEnds(quoted?.[0] ?? '') } };
}

/** What a cell may hold; null leaves it empty. */
export type CsvCell = string | number | null;

/**
 * A cell of comma-separated values (RFC 4180). Text that a spreadsheet would run as a formula is defused by `'`; what cannot
 * be seen is written out.
 */
export function csvCell(cell: CsvCell): string {
  const text =
    typeof cell === 'string'
      ? printableLines(cell).replace(/^[=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20]/, "'$&")
      : `${cell ?? ''}`;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Rows as comma-separated values (RFC 4180: lines end with CRLF, quotation marks are doubled). */
export function formatCsv(rows: readonly (readonly CsvCell[])[]): string {
  return rows.map((row) => `${row.map(csvCell).join(',')}\r\n`).join('');
}
