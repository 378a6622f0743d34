import type { Document } from '../text/document.ts';
import { formatMarkdown, type MarkdownFormat } from '../text/format-markdown.ts';
import { formatText, type TextFormat } from '../text/format-text.ts';
import { documentInPrint } from './in-print.ts';

/** The forms in which people read a document. */
const documentForms = ['text', 'markdown'] as const;

/** A form in which people read a document. */
export type DocumentForm = (typeof documentForms)[number];

/** A document in the form that is asked for, with its quantities as print writes them. */
export function formatDocument(
  document: Document,
  form: DocumentForm,
  format: TextFormat & MarkdownFormat = {},
): string {
  const printed = documentInPrint(document);
  return form === 'markdown' ? formatMarkdown(printed, format) : formatText(printed, format);
}
