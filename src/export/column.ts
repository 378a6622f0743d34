import { capitalised } from '../text/words.ts';
import type { Dimension } from '../units/dimension.ts';
import { dimensionInfo } from '../units/dimension.ts';
import { clean } from '../units/round-to-step.ts';

/** What a cell of an exported table holds; null where nothing is known. */
export type Cell = string | number | boolean | null;

/** The types of columns, as Table Schema (Data Package standard 2.0) names them. */
export type ColumnType = 'string' | 'number' | 'integer' | 'boolean' | 'date';

/** A column of an exported table. */
export interface Column<Row> {
  /** Lower case, with the unit behind it where it has one: `extruded_mass_g`. */
  readonly name: string;
  readonly type: ColumnType;
  readonly description: string;
  /** UCUM code of the unit; null for what has none, or names it in a column beside it. */
  readonly unit: string | null;
  /** What a row holds there; undefined and numbers that are none become null. */
  readonly cell: (row: Row) => Cell | undefined;
}

type ColumnOf<Row> = [name: string, description: string, cell: (row: Row) => Cell | undefined];

/** A column of text. */
export function words<Row>(...of: ColumnOf<Row>): Column<Row> {
  return column('string', ...of);
}

/** A column of numbers that have no unit, or whose unit stands in a column beside them. */
export function figure<Row>(...of: ColumnOf<Row>): Column<Row> {
  return column('number', ...of);
}

/** A column of whole numbers. */
export function whole<Row>(...of: ColumnOf<Row>): Column<Row> {
  return column('integer', ...of);
}

/** A column of what holds or does not. */
export function flag<Row>(...of: ColumnOf<Row>): Column<Row> {
  return column('boolean', ...of);
}

/** A column of days, written YYYY-MM-DD. */
export function day<Row>(...of: ColumnOf<Row>): Column<Row> {
  return column('date', ...of);
}

/** A column of quantities in the canonical unit of their dimension, which stands behind the name: `speed` becomes `speed_mm_per_s`. */
export function quantity<Row>(
  name: string,
  dimension: Dimension,
  description: string,
  cell: (row: Row) => number | null | undefined,
): Column<Row> {
  const unit = dimensionInfo[dimension].canonicalUnit ?? null;
  return {
    ...column(
      'number',
      quantityName(name, dimension),
      capitalised(`${description}, in ${unitWords(dimension)}`),
      cell,
    ),
    unit,
  };
}

/** `extruded_mass_g` for `extrudedMass`: words with low lines between, then the unit. */
function quantityName(key: string, dimension: Dimension): string {
  return [snake(key), unitSuffix(dimension)].filter((part) => part !== '').join('_');
}

/** `outer_contour` for `outerContour`. */
function snake(key: string): string {
  return key.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
}

/** A unit as a part of a name: `mm3_per_s` for `mm3/s`; nothing for a number of things. */
function unitSuffix(dimension: Dimension): string {
  if (dimension === 'count') return '';
  if (dimension === 'ratio') return 'fraction';
  const unit = dimensionInfo[dimension].canonicalUnit ?? '';
  return unit.toLowerCase().replace('[spl]{a}', '_a').replaceAll('/', '_per_').replaceAll('.', '_');
}

function unitWords(dimension: Dimension): string {
  if (dimension === 'ratio') return 'parts of 1';
  if (dimension === 'count') return 'pieces';
  return dimensionInfo[dimension].canonicalUnit ?? 'its currency';
}

function column<Row>(
  type: ColumnType,
  name: string,
  description: string,
  cell: (row: Row) => Cell | undefined,
): Column<Row> {
  return { name, type, description, unit: null, cell: (row) => cellOf(cell(row)) };
}

/** A cell without what is no value, an empty text included, and without the last digits that binary fractions leave. */
function cellOf(value: Cell | undefined): Cell {
  if (value === undefined || value === '') return null;
  if (typeof value !== 'number') return value;
  // Of zero there is one only.
  return Number.isFinite(value) ? clean(value) || 0 : null;
}
