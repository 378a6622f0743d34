import { bandAt } from '../registry/facts-of-key.ts';
import { shapes } from '../registry/generated/shapes.ts';
import type { BandRange, PlausibleBand } from '../registry/key-facts.ts';
import type { AnyProfile } from '../registry/profile.ts';
import { isObject, leavesOf, type Path } from '../registry/shape.ts';
import type { Dimension } from '../units/dimension.ts';
import { dimensionsWithSign, isShare } from './figure-signs.ts';

/** A figure of a profile that lies outside of a band. */
export interface FigureOutside {
  readonly path: Path;
  readonly dimension: Dimension;
  /** The end that lies outside. */
  readonly value: number;
  readonly band: PlausibleBand;
  /** Whether it lies even outside of what is possible. */
  readonly impossible: boolean;
}

const knownOutside = new WeakMap<AnyProfile, readonly FigureOutside[]>();

/**
 * Every figure that lies outside of the usual band of its place; what has a wrong sign is left to its own rule. Several
 * rules ask.
 */
export function figuresOutside(profile: AnyProfile): readonly FigureOutside[] {
  const figures = knownOutside.get(profile) ?? [...figuresIn(profile)];
  knownOutside.set(profile, figures);
  return figures;
}

function* figuresIn(profile: AnyProfile): Generator<FigureOutside> {
  for (const { path, shape, value } of leavesOf('quantity', shapes[profile.kind], profile.data)) {
    const band = bandAt(profile.kind, path);
    if (band === undefined || isOpenEnded(profile, path)) continue;
    const { dimension } = shape;
    const { usual, possible } = band;
    const outside = endsOf(value).filter(
      (end) => isSigned(end, dimension, profile.kind, path) && !within(end, usual),
    );
    const worst = outside.find((end) => !within(end, possible)) ?? outside[0];
    if (worst !== undefined)
      yield { path, dimension, value: worst, band, impossible: !within(worst, possible) };
  }
}

/** Whether a side of a build envelope is as long as the room behind a belt. */
function isOpenEnded(profile: AnyProfile, [key]: Path): boolean {
  return profile.kind === 'machine' && profile.data.layout === 'belt' && key === 'envelope';
}

/** The numbers of a quantity in canonical units: one, or the two ends of a range. */
export function endsOf(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  return isObject(value) && typeof value.low === 'number' && typeof value.high === 'number'
    ? [value.low, value.high]
    : [];
}

/** Whether a value in the canonical unit lies outside of what is possible in a band. */
export function isImpossible(value: number, band: PlausibleBand): boolean {
  return !within(value, band.possible);
}

/** Counting a value such as 0.3 + 0.6 in doubles must not throw it out of its band. */
const roundOff = 1e-9;

function within(value: number, { low, high }: BandRange): boolean {
  const slack = roundOff * Math.max(Math.abs(low), Math.abs(high));
  return value >= low - slack && value <= high + slack;
}

/** Whether no other rule complains about the sign, or about a share above the whole. */
function isSigned(value: number, dimension: Dimension, kind: AnyProfile['kind'], path: Path): boolean {
  if (isShare(dimension, kind, path)) return value >= 0 && value <= 1;
  return value > 0 || dimensionsWithSign.includes(dimension);
}
