import type { AnyProfile } from '../../src/registry/profile.ts';
import { type Path, toPointer } from '../../src/registry/shape.ts';
import { placeAt } from '../../src/registry/yaml/yaml-document.ts';
import type { SlipKind } from './slip-kinds.ts';

/** Texts of a registry by their paths from its root. */
export type Texts = ReadonlyMap<string, string>;

/** Texts that take the place of others; null for a file that is gone. */
export type Edits = ReadonlyMap<string, string | null>;

/** What rests on a trial when its readings are looked at: nothing yet, or what its contributor adopted from them. */
export type Stage = 'nothingAdopted' | 'adoptedFromThem';

export interface Adoption {
  readonly trial: string;
  readonly stage: Stage;
  /** The trial is there only with the slip. */
  readonly isNew?: true;
}

/** One mistake: the texts with it, what differs, and how a finding would name it. */
export interface Slip {
  readonly kind: SlipKind;
  /** The file that has it, from the root of the registry. */
  readonly file: string;
  /** Where it stands; empty for a whole file. */
  readonly pointer: string;
  readonly before: string;
  readonly after: string;
  readonly edits: Edits;
  /** Further places at which a finding would be about it. */
  readonly also?: readonly string[];
  /** The trial whose readings it changes before a limit rests on them; without it everything else stays as it was. */
  readonly adoption?: Adoption;
  /** Words of which a message at another place has one if it is about the slip. */
  readonly words: readonly string[];
}

/** A slip that replaces a part of a profile's text. */
export function textSlip(
  kind: SlipKind,
  profile: AnyProfile,
  path: Path,
  [start, end]: readonly [number, number],
  after: string,
): Slip[] {
  const { text, relativePath: file } = profile.source;
  const before = text.slice(start, end);
  if (before === after) return [];
  const changed = text.slice(0, start) + after + text.slice(end);
  const edits = new Map([[file, changed]]);
  return [{ kind, file, pointer: toPointer(path), before, after, edits, words: wordsOf(path, after) }];
}

/** A slip in a scalar of a profile's YAML; none where the scalar cannot be found or stays the same. */
export function scalarSlip(kind: SlipKind, profile: AnyProfile, path: Path, after: string): Slip[] {
  const range = rangeAt(profile, path);
  return range === null ? [] : textSlip(kind, profile, path, range, after);
}

/** Where the value at a path stands in a profile's text. */
export function rangeAt(profile: AnyProfile, path: Path): readonly [number, number] | null {
  const range = placeAt(profile.yaml, path)?.value?.range;
  return range ? [range[0], range[1]] : null;
}

/** Parts of a statement or of a list are not what a message would call a value by. */
const partsOfStatements = ['value', 'interval', 'basis', 'source', 'evidence', 'readings', 'date', 'at'];

/** Keys that a message about anything else may have, too. */
const commonWords = [
  'x',
  'y',
  'z',
  'id',
  'speed',
  'length',
  'mass',
  'machine',
  'nozzle',
  'filament',
  'batch',
  'rows',
];

/** The key that a place belongs to, as one word and as several, and what stands there now. */
export function wordsOf(path: Path, after: string): string[] {
  const key = path.findLast((step) => typeof step === 'string' && !partsOfStatements.includes(step));
  const isTelling = /\d.* \S/.test(after) || /^[^\d\s].{3,60}$/.test(after);
  const value = isTelling ? [after.replaceAll(/^['"]|['"]$/g, '')] : [];
  if (key === undefined || commonWords.includes(String(key))) return value;
  const spaced = String(key).replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  return [...value, String(key), spaced];
}
