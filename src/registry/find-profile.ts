import { failure, type Problem, type Result, success } from '../result.ts';
import { quote } from '../text/quote.ts';
import { unknownWord } from '../text/unknown-word.ts';
import type { Kind } from './kind.ts';
import type { Profile } from './profile.ts';
import { brokenKey, idsOf, type ProfilesOfKind, type Registry } from './registry.ts';

const unknownCodes = {
  machine: 'unknownMachine',
  filament: 'unknownFilament',
  polymer: 'unknownPolymer',
  trial: 'unknownTrial',
  policy: 'unknownPolicy',
  job: 'unknownJob',
  source: 'unknownSource',
  addition: 'unknownAddition',
} as const satisfies Record<Kind, string>;

/** Why a profile is not found: there is none with that id, or its file has errors. */
export type UnknownProfile<OfKind extends Kind> = Problem<(typeof unknownCodes)[OfKind]>;

/** The profile of a kind with an id. The problem names the id that may be meant, or those that there are. */
export function findProfile<OfKind extends Kind>(
  registry: Registry,
  kind: OfKind,
  id: string,
): Result<Profile<OfKind>, UnknownProfile<OfKind>> {
  const ofKind: ProfilesOfKind = registry;
  const profile = ofKind[kind].get(id);
  return profile === undefined ? failure(unknownProfile(registry, kind, id)) : success(profile);
}

function unknownProfile<OfKind extends Kind>(
  registry: Registry,
  kind: OfKind,
  id: string,
): UnknownProfile<OfKind> {
  const code = unknownCodes[kind];
  if (!registry.broken.has(brokenKey(kind, id))) return unknownWord(code, kind, id, idsOf(registry, kind));
  return {
    code,
    message: `The file of the ${kind} "${quote(id)}" has errors`,
    help: '`meltbounds check` says which.',
  };
}
