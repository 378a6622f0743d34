import type { Text } from './inline.ts';

/** What a command says to people: one document for every form in which it is printed. */
export interface Document {
  /** What the document is about; null where the blocks speak for themselves. */
  readonly title: Text | null;
  /** The answer in one sentence. On a terminal it comes first, elsewhere below the title. */
  readonly answer?: Text;
  readonly blocks: readonly Block[];
}

/** A part of a document. */
export type Block = Section | Paragraph | List | Table | Facts | Terms | Cautions | CodeBlock | Picture;

/** Blocks under a heading. */
export interface Section {
  readonly kind: 'section';
  readonly heading: Text;
  readonly blocks: readonly Block[];
  /** Name of the section in a page; no two sections of a document share one. */
  readonly id?: string;
  /** Class of the section in a page. */
  readonly name?: string;
}

/** One or more sentences. */
interface Paragraph {
  readonly kind: 'paragraph';
  readonly text: Text;
}

/** Items of equal rank, or in an order. */
export interface List {
  readonly kind: 'list';
  readonly items: readonly ListItem[];
  readonly isOrdered: boolean;
}

/** An item of a list; a marked one tells by a sign on a terminal, and by a word elsewhere, what it speaks for. */
export type ListItem = Text | { readonly mark: Mark; readonly text: Text };

/** One sign, such as `+`, and the word that it stands for. */
interface Mark {
  readonly sign: string;
  readonly word: string;
}

/** A column of a table. */
export interface Column {
  readonly heading: string;
  /** What it has in common with its neighbours; pages show it once above their headings. */
  readonly group?: string;
  /** Unit code of all its cells. */
  readonly unit?: string;
  readonly align: 'left' | 'right';
  /** Whether its cells may take several lines where the table would be too wide for a terminal. */
  readonly wraps?: boolean;
  /** Whether its cells name their rows. */
  readonly namesRow?: boolean;
  /** Whether it is the first and its cells name groups of rows; pages show equal neighbours as one cell. */
  readonly namesGroup?: boolean;
}

/** What stands in a cell of a table. */
export type Cell = Text | number;

/** Rows that belong together; the heading stands in place of that of the first column. */
export interface RowGroup {
  readonly heading: string | null;
  readonly rows: readonly (readonly Cell[])[];
}

/** Cells in rows and columns. */
export interface Table {
  readonly kind: 'table';
  readonly columns: readonly Column[];
  readonly groups: readonly RowGroup[];
  /** What the table shows; pages show it, and read it aloud. */
  readonly caption?: string;
  /** Class of the table in a page. */
  readonly name?: string;
}

/** Names with what is known of them. */
interface Facts {
  readonly kind: 'facts';
  readonly facts: readonly Fact[];
}

/** A name with its value. */
export type Fact = readonly [name: string, value: Text];

/** Words with what they mean. */
interface Terms {
  readonly kind: 'terms';
  readonly terms: readonly Fact[];
}

/** What to mind, each item under its label. */
export interface Cautions {
  readonly kind: 'cautions';
  readonly label: 'Caution' | 'Warning';
  readonly items: readonly Text[];
}

/** Lines to be shown as they are. */
interface CodeBlock {
  readonly kind: 'code';
  readonly text: string;
  /** Language for highlighting; empty for none. */
  readonly language: string;
}

/** A picture that is drawn already. */
export interface Picture {
  readonly kind: 'picture';
  /** SVG, for pages. */
  readonly svg: string;
  /** The same drawn of characters, for a terminal; null where there is none. */
  readonly characters: string | null;
  /** What it shows, for who cannot see it. */
  readonly description: string;
  readonly caption: Text;
}

/** Blocks under a heading; a page knows the section by its `id`, and its class by its `name`. */
export function section(heading: Text, blocks: readonly Block[], id?: string, name?: string): Section {
  return {
    kind: 'section',
    heading,
    blocks,
    ...(id !== undefined && { id }),
    ...(name !== undefined && { name }),
  };
}

/** One or more sentences. */
export function paragraph(text: Text): Paragraph {
  return { kind: 'paragraph', text };
}

/** Items of equal rank. */
export function list(items: readonly ListItem[]): List {
  return { kind: 'list', items, isOrdered: false };
}

/** Items with numbers. */
export function numberedList(items: readonly ListItem[]): List {
  return { kind: 'list', items, isOrdered: true };
}

/** A table of rows. */
export function table(
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  { caption, name }: Pick<Table, 'caption' | 'name'> = {},
): Table {
  return groupedTable(columns, [{ heading: null, rows }], {
    ...(caption !== undefined && { caption }),
    ...(name !== undefined && { name }),
  });
}

/** A table of groups of rows. */
export function groupedTable(
  columns: readonly Column[],
  groups: readonly RowGroup[],
  texts: Pick<Table, 'caption' | 'name'> = {},
): Table {
  return { kind: 'table', columns, groups, ...texts };
}

/** The heading of a column where it stands alone: `layer 0.2 mm, line 0.4 mm`. */
export function wholeHeading({ group, heading }: Column): string {
  return group === undefined ? heading : `${group}, ${heading}`;
}

/** Columns of words. */
export function leftColumns(...headings: readonly string[]): Column[] {
  return headings.map((heading) => ({ heading, align: 'left' }));
}

/** Columns of words that name their rows. */
export function rowNames(...headings: readonly string[]): Column[] {
  return headings.map((heading) => ({ heading, align: 'left', namesRow: true }));
}

/** Names with what is known of them. */
export function facts(...known: readonly Fact[]): Facts {
  return { kind: 'facts', facts: known };
}

/** Words with what they mean. */
export function terms(meanings: readonly Fact[]): Terms {
  return { kind: 'terms', terms: meanings };
}

/** What could hurt somebody or something. */
export function cautions(items: readonly Text[]): Cautions {
  return { kind: 'cautions', label: 'Caution', items };
}

/** What makes the numbers of a document less certain. */
export function warnings(items: readonly Text[]): Cautions {
  return { kind: 'cautions', label: 'Warning', items };
}

/** Lines to be shown as they are. */
export function code(text: string, language = ''): CodeBlock {
  return { kind: 'code', text, language };
}
