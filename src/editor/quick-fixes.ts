import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { Range, TextEdit } from 'vscode-languageserver-types';
import { reorderKeys } from '../registry/fix/fix-key-order.ts';
import { fixProfile, spellingEdits } from '../registry/fix/fix-profile.ts';
import { respellings } from '../registry/fix/fix-spelling.ts';
import { bareDates } from '../registry/fix/quote-dates.ts';
import type { ReadDocument } from '../registry/profile.ts';
import type { TextEdit as OffsetEdit } from '../registry/yaml/text-edit.ts';
import { quote } from '../text/quote.ts';
import { editorEdit, rangeOf } from './text-range.ts';

/** A change that an editor offers, which leaves what is read as it is. */
interface QuickFix {
  readonly title: string;
  /** Codes of the rules whose findings it settles. */
  readonly rules: readonly string[];
  /** Where it is offered. */
  readonly range: Range;
  readonly edits: readonly TextEdit[];
}

/** What `check --fix` would change in an open text, each change by itself. */
export function quickFixes(document: ReadDocument, open: TextDocument): QuickFix[] {
  const spellings = [...respellings(document)].map(({ written, canonical, edit }) => ({
    title: `Write \`${quote(canonical)}\` for \`${quote(written)}\``,
    rules: ['style/unit-spelling', 'units/number-form'],
    range: rangeOf(open, edit.start, edit.end),
    edits: [editorEdit(open, edit)],
  }));
  const { kind, source, yaml } = document;
  const dates = [...bareDates(kind, source.text, yaml)].map(({ written, edit }) => ({
    title: `Put ${written} in quotation marks`,
    rules: ['style/bare-date'],
    range: rangeOf(open, edit.start, edit.end),
    edits: [editorEdit(open, edit)],
  }));
  const order = orderFix(document, open);
  return [...spellings, ...dates, ...(order === null ? [] : [order])];
}

function orderFix({ source, yaml, kind }: ReadDocument, open: TextDocument): QuickFix | null {
  const reordering = reorderKeys(source.text, yaml, kind);
  if (reordering === null) return null;
  const edit = difference(source.text, reordering.text);
  return {
    title: 'Put the keys in the order of the schema',
    rules: ['style/key-order'],
    range: rangeOf(open, edit.start, edit.end),
    edits: [editorEdit(open, edit)],
  };
}

/** All of it in one go, as edits of only what changes; none where there is nothing to fix. */
export function allFixes(document: ReadDocument, open: TextDocument): TextEdit[] {
  const fixed = fixProfile(document);
  if (fixed === null) return [];
  if (!fixed.reordered) return spellingEdits(document).map((edit) => editorEdit(open, edit));
  return [editorEdit(open, difference(document.source.text, fixed.text))];
}

/** The one edit, of whole lines, that makes a text into another. */
function difference(before: string, after: string): OffsetEdit {
  const most = Math.min(before.length, after.length);
  let start = 0;
  while (start < most && before[start] === after[start]) start++;
  start = start === 0 ? 0 : before.lastIndexOf('\n', start - 1) + 1;
  let kept = 0;
  while (kept < most - start && before.at(-1 - kept) === after.at(-1 - kept)) kept++;
  const lineBreak = before.indexOf('\n', before.length - kept);
  kept = lineBreak === -1 ? 0 : before.length - lineBreak - 1;
  return { start, end: before.length - kept, text: after.slice(start, after.length - kept) };
}
