import { groupedBy } from './grouped-by.ts';
import type { Profile } from './profile.ts';
import type { Path } from './shape.ts';

/** What an addition may hold: limits that benches find, and nothing that safety rests on. */
export const addedKeys = [
  'shortestLayerTime',
  'retractionLength',
  'retractionSpeed',
  'pressureCompensation',
  'meltFlow',
  'stickingSpeed',
  'bridgeSpeed',
  'overhangSpeed',
  'contourSpeed',
] as const;

type Additions = ReadonlyMap<string, Profile<'addition'>>;

const byFilament = new WeakMap<Additions, ReadonlyMap<string, readonly Profile<'addition'>[]>>();

/** The additions to a filament, in the order of their files. */
export function additionsTo(filament: string, additions: Additions): readonly Profile<'addition'>[] {
  const known = byFilament.get(additions) ?? groupedBy(additions.values(), ({ data }) => data.filament);
  byFilament.set(additions, known);
  return known.get(filament) ?? [];
}

/** A filament with the statements of its additions behind its own; its text stays that of its file. */
export function extended(
  filament: Profile<'filament'>,
  additions: readonly Profile<'addition'>[],
): Profile<'filament'> {
  if (additions.length === 0) return filament;
  const lists = addedKeys.flatMap((key) => {
    const all = [filament, ...additions].flatMap(({ data }) => data[key] ?? []);
    return all.length === 0 ? [] : [[key, all] as const];
  });
  return { ...filament, data: { ...filament.data, ...Object.fromEntries(lists) } };
}

/** A place in an addition. */
interface PlaceInAddition {
  readonly addition: Profile<'addition'>;
  readonly path: Path;
}

/** Where a place of an extended filament stands that an addition holds; null for what the filament itself holds. */
export function addedPlace(
  [key, position, ...rest]: Path,
  filament: Profile<'filament'>,
  additions: readonly Profile<'addition'>[],
): PlaceInAddition | null {
  const added = addedKeys.find((each) => each === key);
  if (added === undefined || typeof position !== 'number') return null;
  let left = position - (filament.data[added]?.length ?? 0);
  if (left < 0) return null;
  for (const addition of additions) {
    const length = addition.data[added]?.length ?? 0;
    if (left < length) return { addition, path: [added, left, ...rest] };
    left -= length;
  }
  return null;
}
