import { isMarked } from './change-texts.ts';
import {
  type Block,
  type Cell,
  type Column,
  type Document,
  type Fact,
  type List,
  type ListItem,
  type Picture,
  type RowGroup,
  type Section,
  type Table,
  wholeHeading,
} from './document.ts';
import { type Piece, piecesOf, type Text } from './inline.ts';
import { alignedTable, compactTable, escapeMarkdown } from './markdown.ts';
import { collapsed, oneLine } from './one-line.ts';
import { printable } from './printable.ts';

/** How a document is printed as Markdown. */
export interface MarkdownFormat {
  /** Level of the title, 1 unless it is a part of a larger text. */
  readonly level?: number;
  /** Whether tables line up as plain text too, which takes room; they do unless told otherwise. */
  readonly aligned?: boolean;
}

/** A document as Markdown. Whatever its texts say is shown as text: no mark-up, no link, no mention of a person. */
export function formatMarkdown(
  { title, answer, blocks }: Document,
  { level = 1, aligned = true }: MarkdownFormat = {},
): string {
  const inner = { level: title === null ? level : level + 1, aligned };
  const parts = [
    ...(title === null ? [] : [headingLine(title, level)]),
    ...(answer === undefined ? [] : [atLineStart(inline(answer))]),
    ...blocks.map((block) => formatMarkdownBlock(block, inner)),
  ];
  return `${parts.filter((part) => part !== '').join('\n\n')}\n`;
}

/** A block of a document as Markdown; `level` is that of headings in it. */
export function formatMarkdownBlock(block: Block, format: Required<MarkdownFormat>): string {
  switch (block.kind) {
    case 'section':
      return sectionText(block, format);
    case 'paragraph':
      return atLineStart(inline(block.text));
    case 'list':
      return listText(block);
    case 'table':
      return tableText(block, format.aligned);
    case 'facts':
      return factsText(block.facts);
    case 'terms':
      return factsText(block.terms);
    case 'cautions':
      return listText({
        items: block.items.map((item) => [
          { text: `${block.label}:`, style: 'strong' },
          ' ',
          ...partsOf(item),
        ]),
      });
    case 'code':
      return fenced(block.text, block.language);
    case 'picture':
      return pictureText(block);
    default:
      return block satisfies never;
  }
}

function sectionText({ heading, blocks }: Section, format: Required<MarkdownFormat>): string {
  const inner = blocks.map((block) => formatMarkdownBlock(block, { ...format, level: format.level + 1 }));
  return [headingLine(heading, format.level), ...inner].filter((part) => part !== '').join('\n\n');
}

/** Markdown knows headings down to the sixth level (CommonMark 0.31, 4.2). */
function headingLine(text: Text, level: number): string {
  return `${'#'.repeat(Math.min(level, 6))} ${inline(text)}`;
}

function factsText(facts: readonly Fact[]): string {
  return listText({ items: facts.map(([name, value]) => [`${name}: `, ...partsOf(value)]) });
}

function listText({ items, isOrdered = false }: Pick<List, 'items'> & { isOrdered?: boolean }): string {
  return items
    .map((item, index) => `${isOrdered ? `${index + 1}.` : '-'} ${atLineStart(inline(itemText(item)))}`)
    .join('\n');
}

function itemText(item: ListItem): Text {
  return isMarked(item) ? [`${item.mark.word}: `, ...partsOf(item.text)] : item;
}

function partsOf(text: Text): readonly (string | Piece)[] {
  return typeof text === 'string' ? [text] : text;
}

/** One table a group, since a table has one row of headings. */
function tableText(table: Table, aligned: boolean): string {
  return table.groups.map((group) => groupText(table, group, aligned)).join('\n\n');
}

function groupText({ columns }: Table, { heading, rows }: RowGroup, aligned: boolean): string {
  const shown = columns.map((column, index) => ({
    heading: index === 0 && heading !== null ? plain(heading) : headingText(column),
    align: column.align,
  }));
  const cells = rows.map((row) => row.map(cellText));
  return aligned ? alignedTable(shown, cells) : compactTable(shown, cells);
}

function headingText(column: Column): string {
  const heading = plain(wholeHeading(column));
  return column.unit === undefined ? heading : `${heading} [${column.unit}]`;
}

function plain(text: string): string {
  return escapeMarkdown(collapsed(text));
}

function pictureText({ characters, description, caption }: Picture): string {
  const picture = characters === null ? atLineStart(inline(description)) : fenced(characters, '');
  return `${picture}\n\n${atLineStart(inline(caption))}`;
}

/** Lines between fences that are longer than any run of backticks in them. */
function fenced(text: string, language: string): string {
  const lines = text.trimEnd().split('\n').map(printable);
  const longest = Math.max(
    2,
    ...lines.flatMap((line) => [...line.matchAll(/`+/g)].map(([run]) => run.length)),
  );
  const fence = '`'.repeat(longest + 1);
  return [fence + language, ...lines, fence].join('\n');
}

function inline(text: Text): string {
  return piecesOf(text).map(pieceText).join('');
}

/** In the cell of a table a bar would end even code (GitHub Flavored Markdown, 4.10). */
function cellText(cell: Cell): string {
  if (typeof cell === 'number') return String(cell);
  return piecesOf(cell)
    .map((piece) => (piece.style === 'code' ? pieceText(piece).replaceAll('|', '\\|') : pieceText(piece)))
    .join('');
}

function pieceText({ text, style, target }: Piece): string {
  if (style === 'code') return codeSpan(oneLine(text));
  const escaped = plain(text);
  const shown = style === 'strong' ? `**${escaped}**` : style === 'emphasis' ? `*${escaped}*` : escaped;
  return target === undefined ? shown : `[${shown}](${encodeURI(target).replace(/[()]/g, encodeBracket)})`;
}

function encodeBracket(bracket: string): string {
  return bracket === '(' ? '%28' : '%29';
}

/** Code within a line; more backticks around it than there are in it (CommonMark 0.31, 6.1). */
function codeSpan(text: string): string {
  const longest = Math.max(0, ...[...text.matchAll(/`+/g)].map(([run]) => run.length));
  const fence = '`'.repeat(longest + 1);
  const space = longest > 0 || text.trim() === '' ? ' ' : '';
  return `${fence}${space}${text}${space}${fence}`;
}

/** Text that a line begins with, so that it opens no list, rule or heading (CommonMark 0.31, 4 and 5.2). */
function atLineStart(text: string): string {
  return text
    .replace(/^([-+])(?=\s|$)/, '\\$1')
    .replace(/^(\d{1,9})([.)])(?=\s|$)/, '$1\\$2')
    .replace(/^(=+|-{2,})(?=\s*$)/, '\\$1');
}
