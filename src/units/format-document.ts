import type { Document } from '../text/document.ts';
import { formatHtml } from '../text/format-html.ts';
import { formatMarkdown, type MarkdownFormat } from '../text/format-markdown.ts';
import { formatText, type TextFormat } from '../text/format-text.ts';
import { documentInPrint } from './in-print.ts';

/** A form in which people read a document; HTML is the body of a page. */
export type DocumentForm = 'text' | 'markdown' | 'html';

/** A document in the form that is asked for, with its quantities as print writes them. */
export function formatDocument(
  document: Document,
  form: DocumentForm,
  format: TextFormat & MarkdownFormat = {},
): string {
  const printed = documentInPrint(document);
  switch (form) {
    case 'text':
      return formatText(printed, format);
    case 'markdown':
      return formatMarkdown(printed, format);
    case 'html':
      return `${formatHtml(printed)
        .map(({ markup }) => markup)
        .join('\n')}\n`;
    default:
      return form satisfies never;
  }
}
