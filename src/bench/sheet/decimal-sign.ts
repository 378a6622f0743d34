import { failure, type Result, success } from '../../result.ts';
import type { CellSeparator } from '../../text/csv.ts';
import { quote } from '../../text/quote.ts';
import type { BenchProblem } from '../bench-problem.ts';
import { type DecimalSign, isGroupedWith, type NumberForms, numberForms } from './number-forms.ts';

/** A cell of a column of numbers. */
export interface NumberCell {
  readonly column: string;
  readonly text: string;
  readonly row: number;
}

/** How the numbers of a sheet are to be read. */
export interface NumberStyle {
  /** Null where no number has decimals. */
  readonly decimal: DecimalSign | null;
  /** Whether the other sign stands between thousands, as some number shows beyond doubt. */
  readonly isGrouped: boolean;
}

type ReadCell = NumberCell & { readonly forms: NumberForms };

/**
 * Finds the decimal sign of a sheet from all of its numbers together. Those that can be read in one way only decide; where none
 * does, the separator or the user must: between commas decimals have a point; programs write semicolons where decimals have commas;
 * elsewhere a lone `1,234` is either number.
 */
export function numberStyle(
  cells: readonly NumberCell[],
  separator: CellSeparator | null,
  asked: DecimalSign | undefined,
): Result<NumberStyle, readonly BenchProblem[]> {
  const read = cells.map((cell) => ({ ...cell, forms: numberForms(cell.text) }));
  const evidence = { '.': read.filter(isOnly('.')), ',': read.filter(isOnly(',')) };
  const given = asked ?? (separator === ',' ? '.' : undefined);
  const [point] = evidence['.'];
  const [comma] = evidence[','];
  if (given === undefined && point !== undefined && comma !== undefined)
    return failure([mixed(point, comma)]);
  const open = read.filter(isOpen);
  const shown = point === undefined ? (comma === undefined ? null : ',') : '.';
  const decimal = given ?? shown ?? usualSign(open, separator);
  if (decimal === null) return open[0] === undefined ? success({ decimal, isGrouped: false }) : unclear(open);
  const isGrouped = evidence[decimal].some(({ text }) => isGroupedWith(text, decimal));
  const stray =
    isGrouped || asked !== undefined ? [] : open.filter(({ text }) => isGroupedWith(text, decimal));
  return stray[0] === undefined ? success({ decimal, isGrouped }) : unclear(stray);
}

function isOpen({ forms }: ReadCell): boolean {
  return forms['.'] !== null && forms[','] !== null && forms['.'] !== forms[','];
}

/** The decimal sign of those whose programs write this separator, where the numbers have no other one. */
function usualSign(open: readonly NumberCell[], separator: CellSeparator | null): DecimalSign | null {
  const haveCommas = open.length > 0 && open.every(({ text }) => !text.includes('.'));
  return separator === ';' && haveCommas ? ',' : null;
}

function isOnly(decimal: DecimalSign): (cell: ReadCell) => boolean {
  const other = decimal === '.' ? ',' : '.';
  return ({ forms }) => forms[decimal] !== null && forms[other] === null;
}

function mixed(point: NumberCell, comma: NumberCell): BenchProblem {
  const [first, second] = point.row <= comma.row ? [point, comma] : [comma, point];
  return {
    code: 'ambiguousNumber',
    message: `${first.column} \`${quote(first.text)}\` and ${second.column} \`${quote(second.text)}\` in line ${second.row} have different decimal signs`,
    found: quote(first.text),
    help: 'write all decimals with a point, or all with a comma',
    row: first.row,
  };
}

function unclear([first, ...others]: readonly ReadCell[]): Result<never, readonly BenchProblem[]> {
  if (first === undefined) return failure([]);
  const { column, text, row, forms } = first;
  const more = others.length === 0 ? '' : ` (and ${others.length} more like it)`;
  return failure([
    {
      code: 'ambiguousNumber',
      message: `${column} \`${quote(text)}\` can be read as ${forms[',']} with a decimal comma or as ${forms['.']} with a decimal point${more}`,
      found: quote(text),
      help: 'write decimals with a point, and nothing between thousands',
      row,
    },
  ]);
}
