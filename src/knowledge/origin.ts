import { compareText } from '../registry/finding.ts';
import type { Statement } from '../registry/generated/documents.ts';
import type { Kind } from '../registry/kind.ts';
import type { AnyProfile } from '../registry/profile.ts';
import type { Registry } from '../registry/registry.ts';
import { type Block, paragraph } from '../text/document.ts';
import { strong } from '../text/inline.ts';
import { capitalised, counted, enumerated } from '../text/words.ts';

/** What of a result is not real: trials whose readings were simulated, and profiles that are invented. */
export interface Origin {
  /** Ids of trials, sorted. */
  readonly simulated: readonly string[];
  /** Profiles by kind and id, sorted. */
  readonly invented: readonly ProfileName[];
}

interface ProfileName {
  readonly kind: Kind;
  readonly id: string;
}

/** What a result rests on. */
interface OriginParts {
  readonly profiles?: Iterable<ProfileName>;
  /** Ids of trials. */
  readonly trials?: Iterable<string>;
}

/** What of some profiles and trials of a registry is not real; what the registry does not hold is left out. */
export function originOf(registry: Registry, { profiles = [], trials = [] }: OriginParts): Origin {
  const named = new Map([...profiles].map(({ kind, id }) => [`${kind} ${id}`, { kind, id }]));
  return {
    simulated: [...new Set(trials)].filter((id) => isSimulatedTrial(registry, id)).toSorted(compareText),
    invented: [...named.values()]
      .filter(({ kind, id }) => isInvented(registry[kind].get(id)))
      .toSorted((a, b) => compareText(a.kind, b.kind) || compareText(a.id, b.id)),
  };
}

/** Whether a profile says that it is invented. */
function isInvented(profile: AnyProfile | undefined): boolean {
  return profile !== undefined && 'invented' in profile.data && profile.data.invented === true;
}

/** Whether the readings of a trial were simulated; false for a trial that is not in the registry. */
function isSimulatedTrial(registry: Registry, id: string): boolean {
  return registry.trial.get(id)?.data.origin === 'simulated';
}

/** Whether a statement rests on a trial whose readings were simulated. */
export function isSimulated({ evidence }: Statement<unknown>, registry: Registry): boolean {
  return evidence !== undefined && isSimulatedTrial(registry, evidence);
}

/** `measured (simulated)`: a basis, with what its readings are. */
export function basisWords<Basis extends string>(
  basis: Basis,
  simulated: boolean,
): Basis | `${Basis} (simulated)` {
  return simulated ? `${basis} (simulated)` : basis;
}

/** `Simulated readings and invented profiles`: the head of a page; null where everything is real. */
export function originHeading({ simulated, invented }: Origin): string | null {
  if (simulated.length === 0 && invented.length === 0) return null;
  if (simulated.length === 0) return 'Invented profiles';
  return invented.length === 0 ? 'Simulated readings' : 'Simulated readings and invented profiles';
}

/** Names up to this many are written out. */
const namedAtMost = 2;

/**
 * One sentence for the head of a page: `Simulated readings (trial lantern-stagecraft-pla-230) and invented profiles
 * (machine brackwater/lantern): no bench has measured this.` Null where everything is real.
 */
export function originSentence(origin: Origin): string | null {
  const { simulated, invented } = origin;
  const parts = [
    simulated.length === 0 ? [] : `simulated readings (${trialsText(simulated)})`,
    invented.length === 0 ? [] : inventedText(invented.map(({ kind, id }) => `${kind} ${id}`)),
  ].flat();
  if (parts.length === 0) return null;
  const end = simulated.length === 0 ? 'no such thing exists' : 'no bench has measured this';
  return `${capitalised(parts.join(' and '))}: ${end}.`;
}

/** The same as the first block of a document; no block where everything is real. */
export function originBlocks(origin: Origin): Block[] {
  const sentence = originSentence(origin);
  return sentence === null ? [] : [paragraph([strong(sentence)])];
}

function inventedText(names: readonly string[]): string {
  return names.length > namedAtMost
    ? `${names.length} invented profiles`
    : `invented profiles (${enumerated(names)})`;
}

function trialsText(ids: readonly string[]): string {
  if (ids.length > namedAtMost) return counted(ids.length, 'trial');
  return `${ids.length > 1 ? 'trials' : 'trial'} ${enumerated(ids)}`;
}
