import { shapes } from '../registry/generated/shapes.ts';
import type { AnyProfile } from '../registry/profile.ts';
import { isObject, leavesOf, type Path } from '../registry/shape.ts';
import type { Range } from '../units/canonical.ts';
import type { Dimension } from '../units/dimension.ts';
import { parseRange } from '../units/parse-quantity.ts';
import { conditionBands, type FigureBand, figureBands } from './figure-bands.ts';
import { dimensionsWithSign, isShare } from './figure-signs.ts';

/** A figure of a profile that lies outside of a band. */
export interface FigureOutside {
  readonly path: Path;
  readonly dimension: Dimension;
  /** The end that lies outside. */
  readonly value: number;
  readonly band: FigureBand;
  /** Whether it lies even outside of what is possible. */
  readonly impossible: boolean;
}

/** Every figure that lies outside of the usual band of its place; what has a wrong sign is left to its own rule. */
export function* figuresOutside(profile: AnyProfile): Generator<FigureOutside> {
  for (const { path, shape, value } of leavesOf('quantity', shapes[profile.kind], profile.data)) {
    const band = bandOf(profile.kind, path);
    if (band === null) continue;
    const { dimension } = shape;
    const [usual, possible] = [readBand(band.usual, dimension), readBand(band.possible, dimension)];
    const outside = endsOf(value).filter(
      (end) => isSigned(end, dimension, profile.kind, path) && !within(end, usual),
    );
    const worst = outside.find((end) => !within(end, possible)) ?? outside[0];
    if (worst !== undefined)
      yield { path, dimension, value: worst, band, impossible: !within(worst, possible) };
  }
}

/** The numbers of a quantity in canonical units: one, or the two ends of a range. */
export function endsOf(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  return isObject(value) && typeof value.low === 'number' && typeof value.high === 'number'
    ? [value.low, value.high]
    : [];
}

/** Whether a value in the canonical unit of a dimension lies outside of what is possible in a band. */
export function isImpossible(value: number, dimension: Dimension, band: FigureBand): boolean {
  return !within(value, readBand(band.possible, dimension));
}

/** Counting a value such as 0.3 + 0.6 in doubles must not throw it out of its band. */
const roundOff = 1e-9;

function within(value: number, { low, high }: Range): boolean {
  const slack = roundOff * Math.max(Math.abs(low), Math.abs(high));
  return value >= low - slack && value <= high + slack;
}

/** Whether no other rule complains about the sign, or about a share above the whole. */
function isSigned(value: number, dimension: Dimension, kind: AnyProfile['kind'], path: Path): boolean {
  if (isShare(dimension, kind, path)) return value >= 0 && value <= 1;
  return value > 0 || dimensionsWithSign.includes(dimension);
}

function bandOf(kind: AnyProfile['kind'], path: Path): FigureBand | null {
  const condition = path.indexOf('at');
  const steps = path.map((step) => (typeof step === 'number' ? '*' : step === 'interval' ? 'value' : step));
  const [table, place] =
    condition === -1
      ? [figureBands[kind], steps.join('/')]
      : [conditionBands, steps.slice(condition + 1).join('/')];
  return table !== undefined && Object.hasOwn(table, place) ? (table[place] ?? null) : null;
}

function readBand(text: string, dimension: Dimension): Range {
  const range = parseRange(text, dimension);
  if (!range.ok) throw new Error(`a band is no range: ${range.error.message}`);
  return range.value;
}
