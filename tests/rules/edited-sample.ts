import { expect, it } from 'vitest';
import { loadFiles } from '../../src/registry/load-files.ts';
import { checkRegistry } from '../../src/rules/engine/check-registry.ts';
import { testDay } from '../run-command.ts';
import { replacedOnce, sampleTexts } from '../sample-texts.ts';

/**
 * A stretch of a file of the sample registry replaced by another, a line added below one, a file copied and edited, or a
 * file written anew.
 */
export type Edit =
  | { readonly in: string; readonly from: string; readonly to: string }
  | { readonly in: string; readonly below: string; readonly add: string }
  | { readonly copy: string; readonly to: string; readonly edits: readonly (readonly [string, string])[] }
  | { readonly write: string; readonly text: string };

/** A slip in the sample registry, and everything that is found then. */
export interface Slip {
  readonly slip: string;
  readonly edits: readonly Edit[];
  readonly found: readonly string[];
}

/** What comes near a slip and is none: nothing is found. */
export interface NearMiss {
  readonly nearMiss: string;
  readonly edits: readonly Edit[];
}

/** Tests that each slip is found as it says, and that nothing is found in what comes near one. */
export function testCases({ slips = [], nearMisses = [] }: CaseLists): void {
  it.each(slips)('finds $slip', ({ edits, found }) => {
    expect(findingsAfter(edits)).toEqual(found);
  });
  it.each(nearMisses)('accepts $nearMiss', ({ edits }) => {
    expect(findingsAfter(edits)).toEqual([]);
  });
}

interface CaseLists {
  readonly slips?: readonly Slip[];
  readonly nearMisses?: readonly NearMiss[];
}

/**
 * Everything that is found in the sample registry after some edits: `SEVERITY CODE FILE | LINE`, the line without its
 * indentation and with `»` at the column of the finding.
 */
export function findingsAfter(edits: readonly Edit[]): string[] {
  const texts = textsAfter(edits);
  const findings = checkRegistry(loadFiles([{ folder: '', texts }]), { today: testDay });
  return findings.map(({ severity, rule, file, line, column }) => {
    const text = textAt(texts, file).split('\n')[line - 1] ?? '';
    const marked = `${text.slice(0, column - 1)}»${text.slice(column - 1)}`;
    return `${severity} ${rule} ${file} | ${marked.trim()}`;
  });
}

/** The texts of the sample registry after some edits. */
export function textsAfter(edits: readonly Edit[]): ReadonlyMap<string, string> {
  const texts = sampleTexts();
  for (const edit of edits) apply(edit, texts);
  return texts;
}

function apply(edit: Edit, texts: Map<string, string>): void {
  if ('write' in edit) {
    texts.set(edit.write, edit.text);
  } else if ('copy' in edit) {
    const copied = (text: string, [from, to]: readonly [string, string]) => replacedOnce(text, from, to);
    texts.set(edit.to, edit.edits.reduce(copied, textAt(texts, edit.copy)));
  } else {
    const [from, to] =
      'add' in edit ? [`${edit.below}\n`, `${edit.below}\n${edit.add}\n`] : [edit.from, edit.to];
    texts.set(edit.in, replacedOnce(textAt(texts, edit.in), from, to));
  }
}

function textAt(texts: ReadonlyMap<string, string>, file: string): string {
  const text = texts.get(file);
  if (text === undefined) throw new Error(`There is no file ${file}`);
  return text;
}

export const clover = 'filaments/oakhollow/clover-petg.yaml';
export const daisy = 'filaments/oakhollow/daisy-pla.yaml';
export const wren = 'machines/plumstead/wren.yaml';
export const cloverTrial = 'trials/2026/wren-clover-petg-245.yaml';
export const daisyTrial = 'trials/2026/wren-daisy-pla-230.yaml';
export const petg = 'polymers/PET-G.yaml';
export const pla = 'polymers/PLA.yaml';
export const house = 'policies/house.yaml';
export const hook = 'jobs/hook.yaml';
export const tables = 'sources/invented-plastics-tables.yaml';
