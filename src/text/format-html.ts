import { isMarked } from './change-texts.ts';
import type {
  Block,
  Cautions,
  Cell,
  Document,
  ListItem,
  Picture,
  RowGroup,
  Section,
  Table,
} from './document.ts';
import { element, type HtmlAttributes, type Markup } from './html-element.ts';
import { type Piece, piecesOf, type Style, type Text } from './inline.ts';
import { printable } from './printable.ts';
import { xmlContent } from './xml-text.ts';

/**
 * A document as HTML for a page of its own: the title as its heading, then the blocks as its main part. Whatever its
 * texts say is shown as text.
 */
export function formatHtml({ title, answer, blocks }: Document): Markup[] {
  const main = element(
    'main',
    {},
    blocks.map((block) => formatHtmlBlock(block, 2)),
  );
  const header = [
    ...(title === null ? [] : [element('h1', {}, inline(title))]),
    ...(answer === undefined ? [] : [element('p', { class: 'answer' }, inline(answer))]),
  ];
  return header.length === 0 ? [main] : [element('header', {}, header), main];
}

/** A block of a document as HTML; `level` is that of headings in it. */
function formatHtmlBlock(block: Block, level: number): Markup {
  switch (block.kind) {
    case 'section':
      return sectionMarkup(block, level);
    case 'paragraph':
      return element('p', {}, inline(block.text));
    case 'list':
      return element(block.isOrdered ? 'ol' : 'ul', {}, block.items.map(itemMarkup));
    case 'table':
      return tableMarkup(block);
    case 'facts':
      return element('dl', { class: 'facts' }, block.facts.map(factMarkup));
    case 'cautions':
      return cautionMarkup(block);
    case 'code':
      return element('pre', {}, [element('code', {}, [literal(block.text)])]);
    case 'picture':
      return pictureMarkup(block);
    default:
      return block satisfies never;
  }
}

function sectionMarkup({ heading, blocks, id }: Section, level: number): Markup {
  return element('section', id === undefined ? {} : { 'aria-labelledby': id }, [
    element(`h${Math.min(level, 6)}`, { id }, inline(heading)),
    ...blocks.map((block) => formatHtmlBlock(block, level + 1)),
  ]);
}

function itemMarkup(item: ListItem): Markup {
  return element('li', {}, isMarked(item) ? [`${item.mark.word}: `, ...inline(item.text)] : inline(item));
}

function factMarkup([name, value]: readonly [string, Text]): Markup {
  return element('div', {}, [element('dt', {}, [name]), element('dd', {}, inline(value))]);
}

function cautionMarkup({ label, items }: Cautions): Markup {
  return element(
    'ul',
    { class: label.toLowerCase() },
    items.map((item) => element('li', {}, [element('strong', {}, [`${label}:`]), ' ', ...inline(item)])),
  );
}

/** Lines that stay lines. */
function literal(text: string): Markup {
  return { markup: xmlContent(text.trimEnd().split('\n').map(printable).join('\n')) };
}

/** The picture carries its description itself; the caption says how to read it. */
function pictureMarkup({ svg, caption }: Picture): Markup {
  return element('figure', {}, [{ markup: svg.trimEnd() }, element('figcaption', {}, inline(caption))]);
}

/** A table in a box that scrolls sideways on a narrow screen. */
function tableMarkup(table: Table): Markup {
  const { caption, name, groups } = table;
  const markup = element('table', { class: name }, [
    ...(caption === undefined ? [] : [element('caption', {}, [caption])]),
    element('thead', {}, [element('tr', {}, headCells(table))]),
    ...groups.map((group) => bodyMarkup(table, group)),
  ]);
  if (caption === undefined) return element('div', { class: 'scroll' }, [markup]);
  return element('section', { class: 'scroll', tabindex: 0, 'aria-label': caption }, [markup]);
}

/** A unit stands below its heading. */
function headCells({ columns }: Table): Markup[] {
  return columns.map(({ heading, unit, align }) =>
    element(
      heading === '' ? 'td' : 'th',
      { ...(heading !== '' && { scope: 'col' }), class: numberClass(align) },
      [heading, ...(unit === undefined ? [] : [' ', element('span', { class: 'unit' }, [unit])])],
    ),
  );
}

function bodyMarkup({ columns }: Table, { heading, rows }: RowGroup): Markup {
  return element('tbody', {}, [
    ...(heading === null
      ? []
      : [element('tr', {}, [element('th', { scope: 'rowgroup', colspan: columns.length }, [heading])])]),
    ...rows.map((row) =>
      element(
        'tr',
        {},
        row.map((cell, index) => cellMarkup(cell, columns[index]?.namesRow ?? false, columns[index]?.align)),
      ),
    ),
  ]);
}

function cellMarkup(cell: Cell, namesRow: boolean, align: 'left' | 'right' | undefined): Markup {
  const attributes: HtmlAttributes = { ...(namesRow && { scope: 'row' }), class: numberClass(align) };
  return element(
    namesRow ? 'th' : 'td',
    attributes,
    typeof cell === 'number' ? [String(cell)] : inline(cell),
  );
}

function numberClass(align: 'left' | 'right' | undefined): string | undefined {
  return align === 'right' ? 'number' : undefined;
}

/** The element of each style, with its class where it needs one. */
const styleElements: Readonly<Record<Exclude<Style, 'plain'>, readonly [name: string, className?: string]>> =
  {
    code: ['code'],
    strong: ['strong'],
    emphasis: ['em'],
    quiet: ['span', 'quiet'],
    error: ['strong', 'error'],
    warning: ['strong', 'warning'],
    note: ['strong', 'note'],
    good: ['strong', 'good'],
  };

function inline(text: Text): (string | Markup)[] {
  return piecesOf(text).map(pieceMarkup);
}

function pieceMarkup({ text, style, target }: Piece): string | Markup {
  const shown = style === 'plain' ? text : styledMarkup(style, text);
  return target === undefined ? shown : element('a', { href: target }, [shown]);
}

function styledMarkup(style: Exclude<Style, 'plain'>, text: string): Markup {
  const [name, className] = styleElements[style];
  return element(name, { class: className }, [text]);
}
