import type { ReadDocument } from '../profile.ts';
import { applyEdits } from '../yaml/text-edit.ts';
import { readYaml } from '../yaml/yaml-document.ts';
import { reorderKeys } from './fix-key-order.ts';
import { respellings } from './fix-spelling.ts';

/** What fixing the style of a profile has changed; its meaning is the same. */
export interface FixedProfile {
  readonly text: string;
  /** How many quantities are spelled differently now. */
  readonly respelled: number;
  /** Whether its keys had to be put in order. */
  readonly reordered: boolean;
}

/** Fixes what can be fixed without changing what a profile says; null where there is nothing of the kind. */
export function fixProfile(document: ReadDocument): FixedProfile | null {
  const spellings = [...respellings(document)];
  const respelled = applyEdits(
    document.source.text,
    spellings.map(({ edit }) => edit),
  );
  const yaml = readYaml(respelled).document;
  if (yaml === null) throw new Error(`respelling ${document.source.path} has made it unreadable`);
  const reordering = reorderKeys(respelled, yaml, document.kind);
  if (spellings.length === 0 && reordering === null) return null;
  return {
    text: reordering?.text ?? respelled,
    respelled: spellings.length,
    reordered: reordering !== null,
  };
}
