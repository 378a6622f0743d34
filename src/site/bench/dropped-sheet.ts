import type { BenchProblem } from '../../bench/bench-problem.ts';
import { methodOf } from '../../bench/methods.ts';
import { readSheetTable } from '../../bench/sheet/bench-sheet.ts';
import { plainNumber } from '../../bench/sheet/number-forms.ts';
import { readColumnHeads } from '../../bench/sheet/sheet-columns.ts';
import { readSheetText } from '../../bench/sheet/sheet-table.ts';
import { withoutUnread } from '../../bench/sheet/unread-rows.ts';
import { failure, type Result, success } from '../../result.ts';
import { decodeText } from '../../text/decode-text.ts';
import type { Draft, DraftRow, EntryContent } from './draft.ts';
import { rowName } from './draft.ts';

/**
 * The entries that put a sheet in the place of the rows of a draft, with the digits that stand there. Rows that lack their first
 * reading are left out; what was typed before is removed, and can be brought back. Problems: those that `reduce` has with the sheet.
 */
export function entriesOfSheet(
  draft: Draft,
  bytes: Uint8Array,
): Result<readonly EntryContent[], readonly BenchProblem[]> {
  const method = methodOf(draft.head.asked.method);
  const decoded = decodeText(bytes);
  if (decoded === null) return failure([noText]);
  const table = readSheetText(decoded.text);
  if (!table.ok) return table;
  const written = readColumnHeads(table.value.header, method);
  if (!written.ok) return written;
  const isRead = (name: string) => method.read.some((read) => read === name);
  const reading = written.value.find(({ head }) => head !== null && isRead(head.name))?.head?.name ?? '';
  const taken = withoutUnread(table.value, method, reading);
  if (!taken.ok) return taken;
  const sheet = readSheetTable(taken.value, method);
  if (!sheet.ok) return sheet;
  const { columns, decimal } = sheet.value;
  const heads = columns.flatMap(({ head }) => head ?? []);
  const kept = heads.map(({ name, unit }) => ({
    name,
    unit: unit.code,
    isGiven: !isRead(name),
    isOptional: (method.optional ?? []).includes(name),
  }));
  const rows = taken.value.rows.map(({ cells }): DraftRow => {
    const texts = columns.map(({ head }, index) => ({ head, text: String(cells[index] ?? '') }));
    const numbers = texts.flatMap(({ head, text }) =>
      head === null ? [] : [plainNumber(text, decimal ?? '.') ?? text],
    );
    const note = texts.flatMap(({ head, text }) => (head === null && text !== '' ? [text] : [])).join('; ');
    return { cells: numbers, hints: [], note, isRemoved: false };
  });
  const most = Math.max(rows.length, ...draft.rows.map(({ name }) => Number(name) + 1));
  return success([
    { part: 'head', value: { ...draft.head, columns: kept } },
    ...Array.from({ length: most }, (_, place): EntryContent => {
      const row = rows[place] ?? { cells: kept.map(() => ''), hints: [], note: '', isRemoved: true };
      return { part: 'row', name: rowName(place), value: row };
    }),
  ]);
}

const noText: BenchProblem = {
  code: 'otherKind',
  message: 'the file is no text',
  help: 'save the sheet as CSV, and drop that',
};
