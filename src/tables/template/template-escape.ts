import { csvCell } from '../../text/csv.ts';
import { printable } from '../../text/printable.ts';
import { xmlAttribute } from '../../text/xml-text.ts';

/** What the values in a template must be safe for. */
export const templateEscapes = ['none', 'html', 'xml', 'csv'] as const;

/** What the values in a template are made safe for. */
export type TemplateEscape = (typeof templateEscapes)[number];

/** The escape that the name of a template asks for: `sheet.xml` and `sheet.xml.mustache` that of XML. */
export function escapeOfName(fileName: string): TemplateEscape {
  const extension = extensionOf(fileName);
  if (extension === 'html' || extension === 'htm') return 'html';
  return extension === 'xml' || extension === 'csv' ? extension : 'none';
}

/** What a filled template is called at its end: `ini` for `sheet.ini` and for `sheet.ini.mustache`, else `txt`. */
export function extensionOf(fileName: string): string {
  const [, extension] = /\.([a-z0-9]{1,12})$/i.exec(fileName.replace(/\.mustache$/i, '')) ?? [];
  return extension?.toLowerCase() ?? 'txt';
}

/**
 * A value as a template may write it. Whatever the escape, a value stays on one line and shows no invisible characters,
 * so that a name cannot begin a line of its own.
 */
export function escapeValue(target: TemplateEscape, value: unknown): string {
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
