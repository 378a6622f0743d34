import type { Diagnostic, Position, Range } from 'vscode-languageserver-types';
import type { AskedActions } from '../../editor/code-actions.ts';
import { isObject } from '../../registry/shape.ts';
import { pathOfAddress } from './editor-target.ts';
import type { TextChange } from './open-files.ts';

// What comes over the protocol is what somebody else's program has written: each reader gives null for what it is not.

/** A text that an editor names. */
interface NamedText {
  readonly uri: string;
  readonly version: number;
  readonly text: string;
}

export function readNamedText(params: unknown): NamedText | null {
  const document = isObject(params) ? params.textDocument : null;
  if (!isObject(document) || typeof document.uri !== 'string') return null;
  const { uri, version, text } = document;
  return {
    uri,
    version: typeof version === 'number' ? version : 0,
    text: typeof text === 'string' ? text : '',
  };
}

/** The changes of a text; those that make no sense are left out. */
export function readChanges(params: unknown): readonly TextChange[] {
  const changes = isObject(params) ? params.contentChanges : null;
  if (!Array.isArray(changes)) return [];
  return changes.flatMap((change: unknown): TextChange[] => {
    if (!isObject(change) || typeof change.text !== 'string') return [];
    if (change.range === undefined) return [{ text: change.text }];
    const range = readRange(change.range);
    return range === null ? [] : [{ range, text: change.text }];
  });
}

export function readPosition(value: unknown): Position | null {
  if (!isObject(value)) return null;
  const { line, character } = value;
  return isCount(line) && isCount(character) ? { line, character } : null;
}

function readRange(value: unknown): Range | null {
  if (!isObject(value)) return null;
  const [start, end] = [readPosition(value.start), readPosition(value.end)];
  return start === null || end === null ? null : { start, end };
}

function isCount(value: unknown): value is number {
  return typeof value === 'number' && Number.isInteger(value) && value >= 0;
}

export function readAskedActions(params: unknown): Omit<AskedActions, 'isVersioned'> | null {
  const range = isObject(params) ? readRange(params.range) : null;
  if (!isObject(params) || range === null) return null;
  const { diagnostics, only } = isObject(params.context) ? params.context : {};
  return {
    range,
    diagnostics: Array.isArray(diagnostics) ? diagnostics.filter(isDiagnostic) : [],
    only: Array.isArray(only) ? only.filter((kind) => typeof kind === 'string') : null,
  };
}

function isDiagnostic(value: unknown): value is Diagnostic {
  return isObject(value) && readRange(value.range) !== null && typeof value.message === 'string';
}

/** What an editor says of itself at the start. */
interface EditorStart {
  /** Absolute paths of the folders that are open in it. */
  readonly folders: readonly string[];
  readonly isVersioned: boolean;
  /** Whether it can be asked to tell of changed files. */
  readonly canWatch: boolean;
}

export function readStart(params: unknown): EditorStart {
  const given = isObject(params) ? params : {};
  const folders = readFolders(given.workspaceFolders);
  const root = typeof given.rootUri === 'string' ? pathOfAddress(given.rootUri) : null;
  return {
    folders: folders.length > 0 || root === null ? folders : [root],
    isVersioned: valueAt(given, 'capabilities', 'workspace', 'workspaceEdit', 'documentChanges') === true,
    canWatch:
      valueAt(given, 'capabilities', 'workspace', 'didChangeWatchedFiles', 'dynamicRegistration') === true,
  };
}

/** Folders that were opened and closed since. */
export function readFolderChange(params: unknown): { readonly added: string[]; readonly removed: string[] } {
  const event = isObject(params) && isObject(params.event) ? params.event : {};
  return { added: readFolders(event.added), removed: readFolders(event.removed) };
}

function readFolders(value: unknown): string[] {
  if (!Array.isArray(value)) return [];
  return value.flatMap((folder: unknown) =>
    isObject(folder) && typeof folder.uri === 'string' ? (pathOfAddress(folder.uri) ?? []) : [],
  );
}

function valueAt(value: unknown, ...keys: readonly string[]): unknown {
  return keys.reduce<unknown>((inner, key) => (isObject(inner) ? inner[key] : undefined), value);
}
