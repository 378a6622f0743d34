import { createColors } from 'picocolors';
import { isMarked } from './change-texts.ts';
import type { Block, Cautions, Document, Fact, List, Picture, Section } from './document.ts';
import type { Text } from './inline.ts';
import { oneLine } from './one-line.ts';
import { printable } from './printable.ts';
import { type TextPrinter, textLines } from './text-lines.ts';
import { tableLines } from './text-table.ts';

/** How a document is printed for a terminal. */
export interface TextFormat {
  readonly colour?: boolean;
  /** Columns that sentences are broken to, and into which tables are fitted. */
  readonly width?: number;
}

const usualWidth = 80;

/** A document as text for a terminal. What cannot be seen or would steer the terminal is written as `\u{…}`. */
export function formatText({ title, answer, blocks }: Document, format: TextFormat = {}): string {
  const printer = { styles: stylesFor(format.colour ?? false), width: format.width ?? usualWidth };
  const parts = [
    ...(answer === undefined ? [] : [textLines(answer, printer)]),
    ...(title === null ? [] : [boldLines(title, printer)]),
    ...blocks.map((block) => blockLines(block, printer)),
  ];
  return `${parts
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')}\n`;
}

function stylesFor(colour: boolean): TextPrinter['styles'] {
  const { bold, italic, dim, red, yellow, cyan, green } = createColors(colour);
  return {
    plain: (text) => text,
    code: (text) => `\`${text}\``,
    strong: bold,
    emphasis: italic,
    quiet: dim,
    error: red,
    warning: yellow,
    note: cyan,
    good: green,
  };
}

function blockLines(block: Block, printer: TextPrinter): string[] {
  switch (block.kind) {
    case 'section':
      return sectionLines(block, printer);
    case 'paragraph':
      return textLines(block.text, printer);
    case 'list':
      return listLines(block, printer);
    case 'table':
      return tableLines(block, printer);
    case 'facts':
      return factLines(block.facts, printer);
    case 'terms':
      return factLines(block.terms, printer);
    case 'cautions':
      return cautionLines(block, printer);
    case 'code':
      return indented(block.text.trimEnd().split('\n').map(printable));
    case 'picture':
      return pictureLines(block, printer);
    default:
      return block satisfies never;
  }
}

/** A section holds together: its blocks follow without blank lines, a little to the right. */
function sectionLines({ heading, blocks }: Section, printer: TextPrinter): string[] {
  const inner = { ...printer, width: printer.width - 2 };
  return [...boldLines(heading, printer), ...blocks.flatMap((block) => indented(blockLines(block, inner)))];
}

function indented(lines: readonly string[]): string[] {
  return lines.map((line) => (line === '' ? '' : `  ${line}`));
}

function listLines({ items, isOrdered }: List, printer: TextPrinter): string[] {
  const bullets = items.map((item, index) => {
    if (isOrdered) return `${index + 1}.`;
    return isMarked(item) ? item.mark.sign : '-';
  });
  const room = Math.max(0, ...bullets.map((bullet) => bullet.length)) + 1;
  return items.flatMap((item, index) =>
    hanging((bullets[index] ?? '').padEnd(room), isMarked(item) ? item.text : item, printer),
  );
}

function factLines(facts: readonly Fact[], printer: TextPrinter): string[] {
  const room = Math.max(0, ...facts.map(([name]) => name.length)) + 2;
  return facts.flatMap(([name, value]) => hanging(oneLine(name).padEnd(room), value, printer));
}

/** A text whose further lines begin where its first one does, behind what stands before it. */
function hanging(start: string, text: Text, printer: TextPrinter): string[] {
  const [first = '', ...rest] = textLines(text, { ...printer, width: printer.width - start.length });
  return [start + first, ...rest.map((line) => ' '.repeat(start.length) + line)].map((line) =>
    line.trimEnd(),
  );
}

function cautionLines({ label, items }: Cautions, printer: TextPrinter): string[] {
  const style = printer.styles[label === 'Warning' ? 'warning' : 'quiet'];
  return items.flatMap((item) => {
    const parts = typeof item === 'string' ? [item] : item;
    return textLines([`${label}: `, ...parts], printer).map(style);
  });
}

function pictureLines({ characters, description, caption }: Picture, printer: TextPrinter): string[] {
  return [
    ...(characters === null ? textLines(description, printer) : characters.trimEnd().split('\n')),
    ...textLines(caption, printer),
  ];
}

function boldLines(text: Text, printer: TextPrinter): string[] {
  return textLines(text, { ...printer, styles: { ...printer.styles, plain: printer.styles.strong } });
}
