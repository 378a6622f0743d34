import { isCollection, isMap, isNode, isScalar, isSeq, stringify } from 'yaml';
import { failure, type Result, success } from '../../result.ts';
import { lineEnd } from '../../text/line-end.ts';
import type { Path } from '../shape.ts';
import { applyEdits, type TextEdit } from './text-edit.ts';
import { placeAt, readYaml, type YamlDocument } from './yaml-document.ts';

/** Why a text could not be edited without touching more than it should. */
export type EditFailure = 'unreadable' | 'noSuchPlace' | 'flowList' | 'noRoom';

/** A word as a YAML scalar that reads back as text: quoted where it would be a number, true or null. */
export function scalarText(word: string): string {
  return stringify(word, { schema: 'yaml-1.1', lineWidth: 0, singleQuote: true }).trimEnd();
}

/** Replaces one scalar of a YAML text and nothing else. */
export function replaceScalar(text: string, path: Path, scalar: string): Result<string, EditFailure> {
  const { document } = readYaml(text);
  if (document === null) return failure('unreadable');
  const range = placeAt(document, path)?.value?.range;
  return range ? success(text.slice(0, range[0]) + scalar + text.slice(range[1])) : failure('noSuchPlace');
}

/**
 * Gives a key of a mapping in a YAML text a value, in place where the key is there, else behind another key, or as the
 * last. Nothing else changes.
 */
export function setKey(
  text: string,
  mapping: Path,
  [key, written]: readonly [key: string, written: string],
  behind?: string,
): Result<string, EditFailure> {
  const { document } = readYaml(text);
  if (document === null) return failure('unreadable');
  if (placeAt(document, [...mapping, key]) !== null) return replaceScalar(text, [...mapping, key], written);
  const edit = keysInsertion(text, document, mapping, [[key, written]], behind);
  return edit.ok ? success(applyEdits(text, [edit.value])) : edit;
}

/**
 * The edit that adds keys to a mapping of a YAML text, behind another key or as the last ones. They must not be there, and
 * are all read afterwards.
 */
export function keysInsertion(
  text: string,
  document: YamlDocument,
  mapping: Path,
  keys: readonly (readonly [key: string, written: string])[],
  behind?: string,
): Result<TextEdit, EditFailure> {
  const map = placeAt(document, mapping)?.value;
  if (!isMap(map) || !map.range) return failure('noSuchPlace');
  const last = (placeAt(document, [...mapping, behind ?? '']) ?? map.items.at(-1))?.value;
  const first = map.items[0]?.key;
  if (!isNode(last) || !isNode(first) || !last.range || !first.range) return failure('noRoom');
  const end = last.range[1];
  const pairs = keys.map(([key, written]) => `${key}: ${written}`);
  const indent = columnSpaces(text, first.range[0]);
  const edit = map.flow
    ? { start: end, end, text: pairs.map((pair) => `, ${pair}`).join('') }
    : linesInsertion(
        text,
        lineEnd(text, end),
        pairs.map((pair) => indent + pair),
      );
  const after = readYaml(applyEdits(text, [edit])).document;
  const isRead = keys.every(([key]) => after !== null && placeAt(after, [...mapping, key]) !== null);
  return isRead ? success(edit) : failure('noRoom');
}

function linesInsertion(text: string, offset: number, lines: readonly string[]): TextEdit {
  const newline = text.includes('\r\n') ? '\r\n' : '\n';
  const block = lines.map((line) => line + newline).join('');
  return { start: offset, end: offset, text: separatorAt(text, offset, newline) + block };
}

/** As many spaces as stand before a place of its line, or would if the line began with nothing else. */
function columnSpaces(text: string, offset: number): string {
  return ' '.repeat(offset - lineStart(text, offset));
}

/**
 * Adds an entry, given as the lines of a block mapping, to the list under a key at the root of a YAML text. A missing
 * list is added before the key `before`, or at the end. Comments, order and everything else stay as they are.
 */
export function appendToList(
  text: string,
  key: string,
  entry: readonly string[],
  before: readonly string[],
): Result<string, EditFailure> {
  const { document } = readYaml(text);
  if (document === null) return failure('unreadable');
  const newline = text.includes('\r\n') ? '\r\n' : '\n';
  const place = placeAt(document, [key]);
  if (place === null) {
    const block = [`${key}:`, ...listEntry(entry, 2)].map((line) => line + newline).join('');
    const offset = keyOffset(document, before);
    const edited = insertLines(
      text,
      offset === null ? text.length : aboveComments(text, offset),
      block,
      newline,
    );
    return whole(edited, key, 1);
  }
  const list = place.value;
  if (list === null || !isSeq(list) || list.flow || !list.range) return failure('flowList');
  const indent = list.range[0] - lineStart(text, list.range[0]);
  const block = listEntry(entry, indent)
    .map((line) => line + newline)
    .join('');
  const last = list.items.at(-1);
  const end = isCollection(last) || isScalar(last) ? (last.range?.[1] ?? list.range[1]) : list.range[1];
  return whole(insertLines(text, lineEnd(text, end), block, newline), key, list.items.length + 1);
}

/** The text, if it is still one document in which the list has that many entries. */
function whole(text: string, key: string, entries: number): Result<string, EditFailure> {
  const { document } = readYaml(text);
  const list = document === null ? null : placeAt(document, [key])?.value;
  return isSeq(list) && list.items.length === entries ? success(text) : failure('noRoom');
}

function listEntry(lines: readonly string[], indent: number): string[] {
  return lines.map((line, index) => `${' '.repeat(indent)}${index === 0 ? '- ' : '  '}${line}`);
}

function keyOffset(document: Parameters<typeof placeAt>[0], keys: readonly string[]): number | null {
  const offsets = keys.flatMap((key) => placeAt(document, [key])?.key?.range?.[0] ?? []);
  return offsets.length === 0 ? null : Math.min(...offsets);
}

/** Start of the comment lines that stand right above a line, which belong to it; else the line itself. */
function aboveComments(text: string, offset: number): number {
  const start = offset === 0 ? 0 : lineStart(text, offset - 1);
  return offset > 0 && text[start] === '#' ? aboveComments(text, start) : offset;
}

function insertLines(text: string, offset: number, block: string, newline: string): string {
  return text.slice(0, offset) + separatorAt(text, offset, newline) + block + text.slice(offset);
}

/** What ends the line before a place where a line is to begin: the last line of a text may lack its end. */
function separatorAt(text: string, offset: number, newline: string): string {
  return offset === 0 || text[offset - 1] === '\n' ? '' : newline;
}

function lineStart(text: string, offset: number): number {
  return text.lastIndexOf('\n', offset - 1) + 1;
}
