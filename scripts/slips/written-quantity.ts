import type { AnyProfile } from '../../src/registry/profile.ts';
import type { Leaf, QuantityShape } from '../../src/registry/shape.ts';
import { type Slip, scalarSlip } from './slip.ts';
import type { SlipKind } from './slip-kinds.ts';

/** A number in a text, as it is written. */
export interface Digits {
  readonly start: number;
  readonly digits: string;
}

/** A quantity as a profile writes it. */
export interface WrittenQuantity {
  readonly profile: AnyProfile;
  readonly leaf: Leaf<QuantityShape>;
  readonly text: string;
  /** One number, the two ends of a range, or none where only a unit stands. */
  readonly numbers: readonly Digits[];
  readonly unit: string;
}

/** The slip that leaves `after` where the quantity stood; quoted where a flow mapping would break on it. */
export function slipIn(kind: SlipKind, { profile, leaf }: WrittenQuantity, after: string): Slip[] {
  return scalarSlip(kind, profile, leaf.path, /[[\]{},]/.test(after) ? `'${after}'` : after);
}

/** The quantity with other numbers under the same unit. */
export function withNumbers({ numbers, unit }: WrittenQuantity, change: (value: number) => number): string {
  const changed = numbers.map(({ digits }) => plainNumber(change(Number(digits))));
  return `${changed.join('..')} ${unit}`;
}

/** The quantity with another unit behind the same numbers. */
export function withUnit({ text, unit }: WrittenQuantity, other: string): string {
  return text.slice(0, text.length - unit.length) + other;
}

export function plainNumber(value: number): string {
  return String(Number(value.toPrecision(12)));
}
