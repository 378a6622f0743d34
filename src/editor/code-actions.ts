import type { TextDocument } from 'vscode-languageserver-textdocument';
import type {
  CodeAction,
  Diagnostic,
  Position,
  Range,
  TextEdit,
  WorkspaceEdit,
} from 'vscode-languageserver-types';
import type { ReadDocument } from '../registry/profile.ts';
import { diagnosticSource } from './diagnostic.ts';
import { allFixes, quickFixes } from './quick-fixes.ts';

/** What an editor asks for. */
export interface AskedActions {
  /** The part of the text that actions are wanted for. */
  readonly range: Range;
  /** What was said of it. */
  readonly diagnostics: readonly Diagnostic[];
  /** Kinds of actions; null for all. */
  readonly only: readonly string[] | null;
  /** Whether the editor refuses edits of a text that has changed since, if it is told of which one they are. */
  readonly isVersioned: boolean;
}

/** Kind of the action that an editor may take by itself whenever it saves. */
const fixAll = `source.fixAll.${diagnosticSource}`;

/** What an editor offers to change in an open text: single fixes where they are due, and all of them in one go. */
export function codeActions(document: ReadDocument, open: TextDocument, asked: AskedActions): CodeAction[] {
  const { range, diagnostics, isVersioned } = asked;
  const single = wants(asked, 'quickfix') ? quickFixes(document, open) : [];
  const all = wants(asked, fixAll) ? allFixes(document, open) : [];
  const due = single.filter((fix) => touches(fix.range, range));
  return [
    ...due.map(({ title, rules, range: at, edits }) => ({
      title,
      kind: 'quickfix',
      diagnostics: diagnostics.filter(
        ({ code, range: here }) => rules.includes(String(code)) && touches(here, at),
      ),
      isPreferred: true,
      edit: workspaceEdit(open, edits, isVersioned),
    })),
    ...(all.length === 0
      ? []
      : [
          {
            title: 'Fix all spellings and the order of the keys',
            kind: fixAll,
            edit: workspaceEdit(open, all, isVersioned),
          },
        ]),
  ];
}

function wants({ only }: AskedActions, kind: string): boolean {
  return only === null || only.some((each) => kind === each || kind.startsWith(`${each}.`));
}

function workspaceEdit(
  { uri, version }: TextDocument,
  edits: readonly TextEdit[],
  isVersioned: boolean,
): WorkspaceEdit {
  return isVersioned
    ? { documentChanges: [{ textDocument: { uri, version }, edits: [...edits] }] }
    : { changes: { [uri]: [...edits] } };
}

/** Whether two ranges share a place, be it a cursor at an end of one. */
function touches(one: Range, other: Range): boolean {
  return isNotAfter(one.start, other.end) && isNotAfter(other.start, one.end);
}

function isNotAfter(one: Position, other: Position): boolean {
  return one.line < other.line || (one.line === other.line && one.character <= other.character);
}
