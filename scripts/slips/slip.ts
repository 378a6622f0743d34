import type { AnyProfile } from '../../src/registry/profile.ts';
import { type Path, toPointer } from '../../src/registry/shape.ts';
import { placeAt } from '../../src/registry/yaml/yaml-document.ts';

/** The slips that are planted, in the order of the table. */
export const slipKinds = [
  'unit of another dimension',
  'Fahrenheit under Cel',
  'x10',
  '/10',
  'x1000',
  'ends swapped',
  'transposed > 30 %',
  'transposed, smaller',
  'comma',
  'mm/min or cm3/h',
  'm for mm',
  'misspelled key',
  'dropped source',
  'dropped evidence',
  'dropped condition',
  'dropped interval',
  'reading off by 20 %',
  'reading changed after adoption',
  'polymer swapped',
  'nozzle swapped',
  'filler dropped',
] as const;

export type SlipKind = (typeof slipKinds)[number];

/** One mistake in one file: the text with it, and what differs. */
export interface Slip {
  readonly kind: SlipKind;
  readonly profile: AnyProfile;
  /** Whether the trial's CSV file is changed and not its YAML. */
  readonly inAttachment: boolean;
  readonly text: string;
  readonly pointer: string;
  readonly before: string;
  readonly after: string;
}

/** A slip in a scalar of a profile's YAML; none where the scalar cannot be found or stays the same. */
export function scalarSlip(kind: SlipKind, profile: AnyProfile, path: Path, after: string): Slip[] {
  const range = placeAt(profile.yaml, path)?.value?.range;
  if (!range) return [];
  return textSlip(kind, profile, path, [range[0], range[1]], after);
}

/** A slip that replaces a part of a profile's YAML. */
export function textSlip(
  kind: SlipKind,
  profile: AnyProfile,
  path: Path,
  [start, end]: readonly [number, number],
  after: string,
): Slip[] {
  const { text } = profile.source;
  const before = text.slice(start, end);
  if (before === after) return [];
  const changed = text.slice(0, start) + after + text.slice(end);
  return [{ kind, profile, inAttachment: false, text: changed, pointer: toPointer(path), before, after }];
}
