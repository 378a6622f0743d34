import { csvCell } from './csv.ts';
import { printable } from './printable.ts';
import { xmlAttribute } from './xml-text.ts';

/** What values can be made safe for, where they are put into a text of any form. */
export const valueEscapes = ['none', 'html', 'xml', 'csv'] as const;

/** What a value is made safe for. */
export type ValueEscape = (typeof valueEscapes)[number];

/**
 * A value as a text of that form may hold it. Whatever the form, a value stays on one line and shows no invisible
 * characters, so that a name cannot begin a line of its own.
 */
export function escapeValue(target: ValueEscape, value: unknown): string {
  const text = printable(String(value).replace(/[\t\r\n\v\f\u0085\u2028\u2029]+/g, ' '));
  switch (target) {
    case 'none':
      return text;
    case 'html':
    case 'xml':
      return xmlAttribute(text);
    case 'csv':
      return csvCell(typeof value === 'number' ? value : text);
    default:
      return target satisfies never;
  }
}

/** A text as the message of a workflow command, the lines that a build step prints for its code host. */
export function escapeCommandMessage(text: string): string {
  return text.replaceAll('%', '%25').replaceAll('\r', '%0D').replaceAll('\n', '%0A');
}

/** A text as a property of a workflow command, between its colons and commas. */
export function escapeCommandProperty(text: string): string {
  return escapeCommandMessage(text).replaceAll(':', '%3A').replaceAll(',', '%2C');
}
