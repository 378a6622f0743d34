import type { Document } from '../../text/document.ts';
import { formatHtml } from '../../text/format-html.ts';
import { element, type Markup } from '../../text/html-element.ts';
import { documentInPrint } from '../../units/in-print.ts';
import { htmlStyle } from './html-style.ts';

/** Nothing may be loaded or run, whatever a text of a registry tries (W3C, Content Security Policy Level 3). */
const policy = "default-src 'none'; style-src 'unsafe-inline'";

/** A document as a whole page that stands on its own, in English. */
export function htmlPage(title: string, document: Document): string {
  return pageAround(title, formatHtml(documentInPrint(document)));
}

/** A whole page around its body; `ownStyle` comes behind the usual style sheet, and must hold no text of a registry. */
export function pageAround(title: string, body: readonly Markup[], ownStyle = ''): string {
  const head = element('head', {}, [
    element('meta', { charset: 'utf-8' }),
    element('meta', { 'http-equiv': 'Content-Security-Policy', content: policy }),
    element('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
    element('title', {}, [title]),
    { markup: `<style>${htmlStyle}${ownStyle}</style>` },
  ]);
  const page = element('html', { lang: 'en' }, [head, element('body', {}, body)]);
  return `<!DOCTYPE html>\n${page.markup}\n`;
}
