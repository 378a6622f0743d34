import { additionsTo, extended } from './addition.ts';
import { type Kind, kinds } from './kind.ts';
import type { AnyProfile, Profile, ReadDocument } from './profile.ts';

export type ProfilesOfKind = { readonly [OfKind in Kind]: ReadonlyMap<string, Profile<OfKind>> };

/** The documents of one or several folders, linked by kind and id. */
export interface Registry extends ProfilesOfKind {
  /** Every document that could be read, whether or not it fits its schema, in the order of the files. */
  readonly documents: readonly ReadDocument[];
  /** Every document that fits its schema, in the order of the files. */
  readonly profiles: readonly AnyProfile[];
  /** `KIND ID` of files that exist but whose content could not be used; a reference to one is not dangling. */
  readonly broken: ReadonlySet<string>;
}

export function brokenKey(kind: Kind, id: string): string {
  return `${kind} ${id}`;
}

/**
 * Links documents; where an id stands twice the first one counts. A filament that is looked up holds what additions
 * add to it, while `profiles` holds each document as it stands in its file.
 */
export function linkRegistry(
  documents: readonly ReadDocument[],
  profiles: readonly AnyProfile[],
  broken: ReadonlySet<string>,
): Registry {
  const maps = {
    machine: new Map<string, Profile<'machine'>>(),
    filament: new Map<string, Profile<'filament'>>(),
    polymer: new Map<string, Profile<'polymer'>>(),
    trial: new Map<string, Profile<'trial'>>(),
    policy: new Map<string, Profile<'policy'>>(),
    job: new Map<string, Profile<'job'>>(),
    source: new Map<string, Profile<'source'>>(),
    addition: new Map<string, Profile<'addition'>>(),
  } satisfies { [OfKind in Kind]: Map<string, Profile<OfKind>> };
  for (const profile of profiles) addFirst(maps, profile);
  for (const [id, filament] of maps.filament)
    maps.filament.set(id, extended(filament, additionsTo(id, maps.addition)));
  return { ...maps, documents, profiles, broken };
}

function addFirst(maps: { [OfKind in Kind]: Map<string, Profile<OfKind>> }, profile: AnyProfile): void {
  // The map of a kind takes profiles of that kind only; the compiler cannot follow the two unions together.
  const map = maps[profile.kind] as Map<string, AnyProfile>;
  if (!map.has(profile.id)) map.set(profile.id, profile);
}

/** An index over a whole registry, built when a rule first asks for it and kept as long as the registry is. */
export function oncePerRegistry<Index>(build: (registry: Registry) => Index): (registry: Registry) => Index {
  const built = new WeakMap<Registry, { readonly index: Index }>();
  return (registry) => {
    const known = built.get(registry) ?? { index: build(registry) };
    built.set(registry, known);
    return known.index;
  };
}

/** A profile as its file has it: a filament without what additions add to it. */
export function asWritten(registry: Registry, kind: Kind, id: string): AnyProfile | undefined {
  return kind === 'filament' ? writtenFilaments(registry).get(id) : registry[kind].get(id);
}

const writtenFilaments = oncePerRegistry((registry) => {
  const written = new Map<string, AnyProfile>();
  for (const profile of registry.profiles) {
    if (profile.kind === 'filament' && !written.has(profile.id)) written.set(profile.id, profile);
  }
  return written;
});

/** Whether a document of that kind and id exists, usable or not. */
export function exists(registry: Registry, kind: Kind, id: string): boolean {
  return registry[kind].has(id) || registry.broken.has(brokenKey(kind, id));
}

/** All ids of a kind, for suggestions. */
export function idsOf(registry: Registry, kind: Kind): readonly string[] {
  return idsByKind(registry)[kind];
}

const idsByKind = oncePerRegistry((registry) => {
  const ids = kinds.map((kind) => [kind, [...registry[kind].keys()]] as const);
  return Object.fromEntries(ids) as Readonly<Record<Kind, readonly string[]>>; // one entry per kind
});
