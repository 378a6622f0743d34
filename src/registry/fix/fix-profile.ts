import type { ReadDocument } from '../profile.ts';
import { applyEdits, type TextEdit } from '../yaml/text-edit.ts';
import { readYaml } from '../yaml/yaml-document.ts';
import { reorderKeys } from './fix-key-order.ts';
import { respellings } from './fix-spelling.ts';
import { bareDates } from './quote-dates.ts';

/** What fixing a profile has changed: its style, and what was to be added to it. */
export interface FixedProfile {
  readonly text: string;
  /** How many quantities and dates are spelled differently now. */
  readonly respelled: number;
  /** How many of the given edits were made. */
  readonly added: number;
  /** Whether its keys had to be put in order. */
  readonly reordered: boolean;
}

/**
 * Fixes what can be fixed without changing what a profile says, and makes edits that add to it; null where there is nothing
 * of the kind.
 */
export function fixProfile(document: ReadDocument, added: readonly TextEdit[] = []): FixedProfile | null {
  const spellings = spellingEdits(document);
  const respelled = applyEdits(document.source.text, [...spellings, ...added]);
  const yaml = readYaml(respelled).document;
  if (yaml === null) throw new Error(`respelling ${document.source.path} has made it unreadable`);
  const reordering = reorderKeys(respelled, yaml, document.kind);
  if (spellings.length + added.length === 0 && reordering === null) return null;
  return {
    text: reordering?.text ?? respelled,
    respelled: spellings.length,
    added: added.length,
    reordered: reordering !== null,
  };
}

/** The edits of single values: quantities in their usual spelling, dates in quotation marks. */
export function spellingEdits(document: ReadDocument): TextEdit[] {
  const { kind, source, yaml } = document;
  const fixes = [...respellings(document), ...bareDates(kind, source.text, yaml)];
  return fixes.map(({ edit }) => edit);
}
