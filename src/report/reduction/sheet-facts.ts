import type { ReadSheet } from '../../bench/sheet/bench-sheet.ts';
import type { SheetColumn } from '../../bench/sheet/sheet-columns.ts';
import type { SheetNote } from '../../bench/sheet/sheet-rows.ts';
import { separatorWords } from '../../bench/sheet/sheet-table.ts';
import type { CharacterEncoding } from '../../text/decode-text.ts';
import { quote } from '../../text/quote.ts';
import { counted } from '../../text/words.ts';
import { printedUnit } from '../../units/print-symbols.ts';

/** A bench sheet with what its file tells beside the cells. */
export interface SheetReading
  extends Pick<ReadSheet, 'observations' | 'separator' | 'decimal' | 'columns' | 'notes'> {
  /** Null for a workbook. */
  readonly encoding: CharacterEncoding | null;
  readonly remarks: readonly string[];
}

/** A name with what was understood. */
export type SheetFact = readonly [name: string, value: string];

/** Most notes of a sheet that are shown, and most characters of each. */
const most = { notes: 10, characters: 120 } as const;

/** How a sheet was understood, so that whoever wrote it can see whether that is right, and the notes in it. */
export function sheetFacts({
  observations,
  separator,
  decimal,
  columns,
  notes,
  encoding,
  remarks,
}: SheetReading): SheetFact[] {
  const form = [
    encoding ?? 'workbook',
    ...(separator === null ? [] : [`${separatorWords(separator)} between the cells`]),
    ...(decimal === null ? [] : [decimal === '.' ? 'decimal points' : 'decimal commas']),
    ...remarks,
    counted(observations.rows.length, 'row'),
  ];
  return [
    ['sheet', form.join(', ')],
    ['columns', columns.map(columnText).join(', ')],
    ...(notes.length === 0 ? [] : [['notes', notesText(notes)] as const]),
  ];
}

function columnText({ head, heading }: SheetColumn): string {
  if (head === null) return `"${quote(heading)}" (not read as numbers)`;
  const understood = `${head.name} [${printedUnit(head.unit.code)}]`;
  const isPlain = heading.replaceAll(/\s/g, '') === `${head.name}[${head.unit.code}]`;
  return isPlain ? understood : `"${quote(heading)}" as ${understood}`;
}

function notesText(notes: readonly SheetNote[]): string {
  const shown = notes.slice(0, most.notes).map(({ row, text }) => {
    const characters = [...text];
    const cut =
      characters.length > most.characters ? `${characters.slice(0, most.characters).join('')}…` : text;
    return `line ${row}: ${cut}`;
  });
  const others = notes.length - shown.length;
  return [...shown, ...(others > 0 ? [`and ${others} more`] : [])].join('; ');
}
