import type { TextDocument } from 'vscode-languageserver-textdocument';
import type { Diagnostic, Hover, Position } from 'vscode-languageserver-types';
import type { Kind } from '../registry/kind.ts';
import type { Registry } from '../registry/registry.ts';
import { ruleDocument } from '../report/rules/rule-document.ts';
import { rules } from '../rules/engine/rules.ts';
import { oneLine } from '../text/one-line.ts';
import { formatDocument } from '../units/format-document.ts';
import { referenceAt } from './reference-at.ts';
import { referenceChoices } from './reference-choices.ts';
import { plainOffset, plainText, rangeOf } from './text-range.ts';

/** What an id at a position of an open text stands for; null where there is none that the registry knows. */
export function referenceHover(
  open: TextDocument,
  position: Position,
  kindByPath: Kind | null,
  registry: Registry,
): Hover | null {
  const text = plainText(open);
  const place = referenceAt(text, plainOffset(open, position), kindByPath);
  if (place === null) return null;
  const id = text.slice(place.start, place.end);
  const choice = referenceChoices(registry, place).find((each) => each.id === id);
  if (choice === undefined) return null;
  return {
    contents: { kind: 'plaintext', value: `${place.to} ${id}: ${oneLine(choice.title)}` },
    range: rangeOf(open, place.start, place.end),
  };
}

/** The page of the rule whose finding lies at a position; null where none does. */
export function ruleHover(diagnostics: readonly Diagnostic[], position: Position): Hover | null {
  const here = diagnostics.find(
    ({ range: { start, end } }) => !isBefore(position, start) && !isBefore(end, position),
  );
  const rule = rules.find(({ code }) => code === here?.code);
  if (here === undefined || rule === undefined) return null;
  return {
    contents: { kind: 'markdown', value: formatDocument(ruleDocument(rule), 'markdown') },
    range: here.range,
  };
}

function isBefore(one: Position, other: Position): boolean {
  return one.line < other.line || (one.line === other.line && one.character < other.character);
}
