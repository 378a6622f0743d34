import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { CompletionItem, CompletionList, Position } from 'vscode-languageserver-types';
import type { Kind } from '../registry/kind.ts';
import type { Registry } from '../registry/registry.ts';
import { oneLine } from '../text/one-line.ts';
import { referenceAt } from './reference-at.ts';
import { referenceChoices } from './reference-choices.ts';
import { plainOffset, plainText, rangeOf } from './text-range.ts';

/** Nobody reads more; what is typed next narrows them down. */
const mostItems = 300;

/** What kind of item a reference is, by the Language Server Protocol. */
const referenceItem = 18;

/** The ids that may stand at a position of an open text, those first that are about the document; null where none belongs. */
export function completionsAt(
  open: TextDocument,
  position: Position,
  kindByPath: Kind | null,
  registry: Registry,
): CompletionList | null {
  const text = plainText(open);
  const offset = plainOffset(open, position);
  const place = referenceAt(text, offset, kindByPath);
  if (place === null) return null;
  const typed = text.slice(place.start, offset).toLowerCase();
  const range = rangeOf(open, place.start, place.end);
  const fitting = referenceChoices(registry, place)
    .filter(({ id, title }) => `${id} ${title}`.toLowerCase().includes(typed))
    .sort((one, other) => Number(other.isLikely) - Number(one.isLikely));
  const items = fitting.slice(0, mostItems).map(
    ({ id, title, isLikely }): CompletionItem => ({
      label: id,
      kind: referenceItem,
      detail: oneLine(title),
      // Whoever types part of a title means the id.
      filterText: text.slice(place.start, offset) || id,
      sortText: `${isLikely ? 0 : 1}${id}`,
      textEdit: { range, newText: id },
    }),
  );
  return { isIncomplete: true, items };
}
