import { isMarked } from './change-texts.ts';
import type {
  Block,
  Cautions,
  Cell,
  Column,
  Document,
  Fact,
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
export function formatHtmlBlock(block: Block, level: number): Markup {
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
    case 'terms':
      return element('dl', { class: 'terms' }, block.terms.flatMap(definitionMarkup));
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

function sectionMarkup({ heading, blocks, id, name }: Section, level: number): Markup {
  return element('section', { class: name, 'aria-labelledby': id }, [
    element(`h${Math.min(level, 6)}`, { id }, inline(heading)),
    ...blocks.map((block) => formatHtmlBlock(block, level + 1)),
  ]);
}

function itemMarkup(item: ListItem): Markup {
  return element('li', {}, isMarked(item) ? [`${item.mark.word}: `, ...inline(item.text)] : inline(item));
}

function factMarkup(fact: Fact): Markup {
  return element('div', {}, definitionMarkup(fact));
}

function definitionMarkup([name, value]: Fact): Markup[] {
  return [element('dt', {}, [name]), element('dd', {}, inline(value))];
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
    element('thead', {}, headRows(table)),
    ...groups.flatMap((group) => bodiesMarkup(table, group)),
  ]);
  if (caption === undefined) return element('div', { class: 'scroll' }, [markup]);
  return element('section', { class: 'scroll', tabindex: 0, 'aria-label': caption }, [markup]);
}

/** One row of headings, or two where columns stand under a heading in common. */
function headRows({ columns }: Table): Markup[] {
  const cells = (shown: readonly Column[]) => shown.map((column) => headCell(column));
  if (columns.every(({ group }) => group === undefined)) return [element('tr', {}, cells(columns))];
  const groups = neighbours(columns, ({ group }) => group).map((inGroup) => {
    const [{ group }] = inGroup;
    return group === undefined
      ? inGroup.map((column) => headCell(column, 2))
      : [element('th', { scope: 'colgroup', colspan: inGroup.length }, [group])];
  });
  const grouped = columns.filter(({ group }) => group !== undefined);
  return [element('tr', {}, groups.flat()), element('tr', {}, cells(grouped))];
}

/** A unit stands below its heading. */
function headCell({ heading, unit, align }: Column, rows?: number): Markup {
  const attributes = { ...(heading !== '' && { scope: 'col' }), rowspan: rows, class: numberClass(align) };
  return element(heading === '' ? 'td' : 'th', attributes, [
    heading,
    ...(unit === undefined ? [] : [' ', element('span', { class: 'unit' }, [unit])]),
  ]);
}

/** Neighbours that are alike, together. */
function neighbours<Item>(items: readonly Item[], likeness: (item: Item) => unknown): [Item, ...Item[]][] {
  const runs: [Item, ...Item[]][] = [];
  for (const item of items) {
    const last = runs.at(-1);
    if (last !== undefined && likeness(last[0]) === likeness(item)) last.push(item);
    else runs.push([item]);
  }
  return runs;
}

function bodiesMarkup({ columns }: Table, { heading, rows }: RowGroup): Markup[] {
  const head =
    heading === null
      ? []
      : [element('tr', {}, [element('th', { scope: 'rowgroup', colspan: columns.length }, [heading])])];
  if (columns[0]?.namesGroup !== true) {
    return [
      element('tbody', {}, [...head, ...rows.map((row) => element('tr', {}, cellsMarkup(row, columns)))]),
    ];
  }
  return neighbours(rows, ([name]) => name).map((named) => namedRows(named, columns));
}

/** Rows behind one cell that names them. */
function namedRows(rows: readonly (readonly Cell[])[], [, ...columns]: readonly Column[]): Markup {
  const lines = rows.map(([name = '', ...others], index) => {
    const attributes = { scope: 'rowgroup', rowspan: rows.length };
    const first = index === 0 ? [element('th', attributes, cellContent(name))] : [];
    return element('tr', {}, [...first, ...cellsMarkup(others, columns)]);
  });
  return element('tbody', {}, lines);
}

function cellsMarkup(row: readonly Cell[], columns: readonly Column[]): Markup[] {
  return row.map((cell, index) => {
    const { namesRow = false, align = 'left' } = columns[index] ?? {};
    const attributes: HtmlAttributes = {
      ...(namesRow && { scope: 'row' }),
      class: cell === '' ? undefined : numberClass(align),
    };
    return element(namesRow ? 'th' : 'td', attributes, cellContent(cell));
  });
}

function cellContent(cell: Cell): (string | Markup)[] {
  return typeof cell === 'number' ? [String(cell)] : inline(cell);
}

function numberClass(align: Column['align']): string | undefined {
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
