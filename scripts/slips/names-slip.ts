import type { Finding } from '../../src/registry/finding.ts';
import type { Slip } from './slip.ts';

/**
 * Whether a finding is about a slip: it points at it, or at what it stands in, or its message or cure names the value or
 * the key, wherever it points. A finding about the whole of the file counts by its words alone.
 */
export function namesSlip(finding: Finding, slip: Slip): boolean {
  return pointsAt(finding, slip) || says(finding, slip);
}

function pointsAt({ file, pointer, rule }: Finding, slip: Slip): boolean {
  if (sheetOf(file) !== sheetOf(slip.file)) return false;
  // What is wrong with YAML, or with a line of a sheet, has no place in a document.
  if (pointer === '') return rule.startsWith('syntax/') || file.endsWith('.csv');
  return [slip.pointer, ...(slip.also ?? [])].some((place) => isOnOneLine(pointer, place));
}

/** A sheet stands beside its trial under the same name. */
function sheetOf(file: string): string {
  return file.replace(/\.(?:csv|ya?ml)$/, '');
}

function isOnOneLine(one: string, other: string): boolean {
  return one === other || one.startsWith(`${other}/`) || other.startsWith(`${one}/`);
}

function says({ message, found, help }: Finding, { words }: Slip): boolean {
  const said = [message, found ?? '', help ?? ''].join(' ').toLowerCase();
  return words.some((word) => hasWord(said, word.toLowerCase()));
}

/** Whether a text has a word as a whole, so that 3 mm is not found in 13 mm. */
function hasWord(text: string, word: string): boolean {
  for (let at = text.indexOf(word); at >= 0; at = text.indexOf(word, at + 1)) {
    const around = [text[at - 1] ?? ' ', text[at + word.length] ?? ' '];
    if (!around.some((sign) => /[a-z0-9]/.test(sign))) return true;
  }
  return false;
}
