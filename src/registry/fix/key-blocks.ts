import { isCollection, isMap, isPair, isScalar } from 'yaml';
import { lineEnd } from '../../text/line-end.ts';
import type { YamlDocument } from '../yaml/yaml-document.ts';

/** The lines of one key at the root of a text: the comments above it, the key, its value. */
export interface KeyBlock {
  readonly key: string;
  readonly text: string;
}

/** A text cut into the keys at its root; header, blocks and footer together are the text. */
interface KeyLayout {
  /** What stands above the first key and not directly on top of it, and lines addressed to programs. */
  readonly header: string;
  readonly blocks: readonly KeyBlock[];
  /** Comments below the last key, and a mark for the end of the document. */
  readonly footer: string;
}

interface Entry {
  readonly key: string;
  /** Offset of the line on which the key stands. */
  readonly start: number;
  /** Offset behind the last line of the value. */
  readonly end: number;
}

/** Cuts a text at the keys of its root; null where these do not each start a line. */
export function keyBlocks(text: string, { tree }: YamlDocument): KeyLayout | null {
  if (!isMap(tree.contents) || tree.contents.flow) return null;
  const entries = tree.contents.items.map((pair) => entryOf(text, pair));
  const placed = entries.filter((entry) => entry !== null);
  const first = placed[0];
  if (first === undefined || placed.length < entries.length) return null;
  const starts = placed.map(({ start }, index) => leadStart(text, placed[index - 1]?.end ?? null, start));
  const end = footerStart(text, placed.at(-1)?.end ?? text.length);
  const newline = text.includes('\r\n') ? '\r\n' : '\n';
  const blocks = placed.map(({ key }, index) => {
    const block = text.slice(starts[index], starts[index + 1] ?? end);
    return { key, text: block.endsWith('\n') ? block : block + newline };
  });
  return { header: text.slice(0, starts[0]), blocks, footer: text.slice(end) };
}

function entryOf(text: string, pair: unknown): Entry | null {
  if (!isPair(pair) || !isScalar(pair.key) || !pair.key.range) return null;
  const at = pair.key.range[0];
  // Keys of the root have no indentation; anything before one is an anchor or a `?`.
  if (at > 0 && text[at - 1] !== '\n') return null;
  return { key: String(pair.key.value), start: at, end: lineEnd(text, endOf(pair)) };
}

/** Offset of the last character that belongs to a node, without the comments that follow it. */
function endOf(node: unknown): number {
  if (isPair(node)) return isEmpty(node.value) ? endOf(node.key) : endOf(node.value);
  if (isCollection(node) && node.flow !== true) {
    const last = node.items.findLast((item) => !isEmpty(item));
    if (last !== undefined) return Math.max(endOf(last), node.range?.[0] ?? 0);
  }
  return isCollection(node) || isScalar(node) ? (node.range?.[1] ?? 0) : 0;
}

function isEmpty(node: unknown): boolean {
  return node === null || (isScalar(node) && (!node.range || node.range[0] === node.range[1]));
}

/** Where the lines above a key that belong to it begin: its comments and blank lines, not those of the value before. */
function leadStart(text: string, previousEnd: number | null, key: number): number {
  if (previousEnd === null) return key - lengthOfLast(linesOf(text.slice(0, key)), endsHeader);
  return key - lengthOfLast(linesOf(text.slice(previousEnd, key)), isIndented);
}

function footerStart(text: string, end: number): number {
  return text.length - lengthOfLast(linesOf(text.slice(end)), isIndented);
}

/** Length of the lines after the last one that ends what came before. */
function lengthOfLast(lines: readonly string[], ends: (line: string) => boolean): number {
  return lines.slice(lines.findLastIndex(ends) + 1).join('').length;
}

function linesOf(text: string): string[] {
  return text.match(/[^\n]*\n|[^\n]+$/g) ?? [];
}

/** An indented comment belongs to the value above it; so does what an empty list item leaves. */
function isIndented(line: string): boolean {
  return /^(?:[ \t]+[^\s]|-)/.test(line);
}

/** Lines that stay at the top: blank ones, `---`, directives, and comments addressed to programs. */
function endsHeader(line: string): boolean {
  return /^\s*$|^---|^%|^#\s*(?:yaml-language-server:|SPDX-)/.test(line);
}
