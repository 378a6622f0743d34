import type { Block, Cell, Column, Document, ListItem, Table } from './document.ts';
import type { Text } from './inline.ts';

/** What becomes of the texts of a document. */
interface TextChange {
  /** Of a sentence or a part of one, with its code between backticks. */
  readonly text: (text: string) => string;
  /** Of the unit of a column. */
  readonly unit: (unit: string) => string;
}

/** A document with other texts; code and pictures stay as they are. */
export function changeTexts({ title, answer, blocks }: Document, change: TextChange): Document {
  return {
    title: title === null ? null : changedText(title, change),
    ...(answer !== undefined && { answer: changedText(answer, change) }),
    blocks: blocks.map((block) => changedBlock(block, change)),
  };
}

function changedBlock(block: Block, change: TextChange): Block {
  const text = (written: Text) => changedText(written, change);
  switch (block.kind) {
    case 'section':
      return {
        ...block,
        heading: text(block.heading),
        blocks: block.blocks.map((inner) => changedBlock(inner, change)),
      };
    case 'paragraph':
      return { ...block, text: text(block.text) };
    case 'list':
      return { ...block, items: block.items.map((item) => changedItem(item, change)) };
    case 'table':
      return changedTable(block, change);
    case 'facts':
      return { ...block, facts: block.facts.map(([name, value]) => [change.text(name), text(value)]) };
    case 'terms':
      return { ...block, terms: block.terms.map(([name, value]) => [change.text(name), text(value)]) };
    case 'cautions':
      return { ...block, items: block.items.map(text) };
    case 'code':
      return block;
    case 'picture':
      return { ...block, caption: text(block.caption) };
    default:
      return block satisfies never;
  }
}

function changedItem(item: ListItem, change: TextChange): ListItem {
  return isMarked(item) ? { ...item, text: changedText(item.text, change) } : changedText(item, change);
}

/** Whether an item of a list carries a mark. */
export function isMarked(item: ListItem): item is Extract<ListItem, { mark: unknown }> {
  return typeof item === 'object' && 'mark' in item;
}

function changedTable(table: Table, change: TextChange): Table {
  const cell = (written: Cell) => (typeof written === 'number' ? written : changedText(written, change));
  return {
    ...table,
    columns: table.columns.map((column) => changedColumn(column, change)),
    groups: table.groups.map(({ heading, rows }) => ({
      heading: heading === null ? null : change.text(heading),
      rows: rows.map((row) => row.map(cell)),
    })),
    ...(table.caption !== undefined && { caption: change.text(table.caption) }),
  };
}

function changedColumn(column: Column, { text, unit }: TextChange): Column {
  return {
    ...column,
    heading: text(column.heading),
    ...(column.group !== undefined && { group: text(column.group) }),
    ...(column.unit !== undefined && { unit: unit(column.unit) }),
  };
}

function changedText(text: Text, change: TextChange): Text {
  if (typeof text === 'string') return change.text(text);
  return text.map((part) => {
    if (typeof part === 'string') return change.text(part);
    return part.style === 'code' ? part : { ...part, text: change.text(part.text) };
  });
}
