import { methodOf } from '../../src/bench/methods.ts';
import type { RandomSource } from '../../src/statistics/random.ts';
import type { Sheet } from './sheet-text.ts';

/** A sheet that tells something else than was read, and what was done to it. */
interface AlteredSheet {
  readonly sheet: Sheet;
  readonly what: string;
}

/** Makes something wrong in a sheet; null where that changes nothing. */
export type Alter = (sheet: Sheet, random: RandomSource) => AlteredSheet | null;

const pick = (random: RandomSource, count: number) => Math.floor(random.uniform() * count);

/** One reading written otherwise, with as many decimals as it had. */
function reading(change: (text: string, random: RandomSource) => string | null): Alter {
  return (sheet, random) => {
    const read = sheet.columns.flatMap((name, index) =>
      methodOf(sheet.method).read.includes(name) ? [index] : [],
    );
    const column = read[pick(random, read.length)] ?? 0;
    const row = pick(random, sheet.rows.length);
    const before = sheet.rows[row]?.[column] ?? '';
    const after = change(before, random);
    if (after === null || Number(after) === Number(before)) return null;
    const rows = sheet.rows.map((cells, index) => (index === row ? cells.with(column, after) : cells));
    return {
      sheet: { ...sheet, rows },
      what: `row ${row + 1}, ${sheet.columns[column]}: ${before} to ${after}`,
    };
  };
}

function times(factor: number): (text: string) => string {
  return (text) => {
    const decimals = text.split('.')[1]?.length ?? 0;
    return (Number(text) * factor).toFixed(factor < 0.5 ? decimals + 1 : decimals);
  };
}

/** Shares by which one reading lies off, by what that is called. */
export const alteredShares = { '10 % more or less': 0.1, '5 % more or less': 0.05 } as const;

function byShare(share: number): Alter {
  return reading((text, random) => times(random.uniform() < 0.5 ? 1 - share : 1 + share)(text));
}

/** Least change by transposed digits that is looked at. */
const farMoved = 0.3;

/** Two digits beside one another changed over, one of the pairs that move the reading far. */
const transposed = reading((text, random) => {
  const moved = [...text.slice(0, -1)].flatMap((digit, index) => {
    const next = text[index + 1] ?? '';
    if (!/\d/.test(digit) || !/\d/.test(next)) return [];
    const after = `${text.slice(0, index)}${next}${digit}${text.slice(index + 2)}`;
    return Math.abs(Number(after) / Number(text) - 1) > farMoved ? [after] : [];
  });
  return moved[pick(random, moved.length)] ?? null;
});

const told: Alter = (sheet, random) => {
  const row = pick(random, sheet.rows.length);
  const rows = sheet.rows.toSpliced(row, 0, sheet.rows[row] ?? []);
  return { sheet: { ...sheet, rows }, what: `row ${row + 1} again` };
};

/** A block of rows, three or more, pasted once more behind the last. */
const pasted: Alter = (sheet, random) => {
  const most = Math.floor(sheet.rows.length / 2);
  if (most < 3) return null;
  const size = 3 + pick(random, most - 2);
  const from = pick(random, sheet.rows.length - size + 1);
  const block = sheet.rows.slice(from, from + size);
  return {
    sheet: { ...sheet, rows: [...sheet.rows, ...block] },
    what: `rows ${from + 1} to ${from + size} again`,
  };
};

/** What can be done to a sheet by itself. */
export const alterations = {
  'times 10': reading(times(10)),
  'divided by 10': reading(times(0.1)),
  'digits transposed, moved over 30 %': transposed,
  '10 % more or less': byShare(alteredShares['10 % more or less']),
  '5 % more or less': byShare(alteredShares['5 % more or less']),
  'a row told twice': told,
  'a block of rows pasted': pasted,
} as const satisfies Readonly<Record<string, Alter>>;

const decimalsOf = (text: string) => text.split('.')[1]?.length ?? 0;

/** The readings of a sheet changed one by one. */
function mapReadings(sheet: Sheet, change: (text: string, row: number) => string): Sheet {
  const read = methodOf(sheet.method).read;
  const rows = sheet.rows.map((cells, row) =>
    cells.map((text, column) => (read.includes(sheet.columns[column] ?? '') ? change(text, row) : text)),
  );
  return { ...sheet, rows };
}

/** How a sheet is copied into a trial of another pairing. */
export const copies = {
  'copied whole': (sheet: Sheet) => sheet,
  'copied in part': (sheet: Sheet) => ({
    ...sheet,
    rows: sheet.rows.slice(0, Math.ceil(0.7 * sheet.rows.length)),
  }),
  'copied and scaled by 2 %': (sheet: Sheet) =>
    mapReadings(sheet, (text) => (Number(text) * 1.02).toFixed(decimalsOf(text))),
  'copied, every fifth reading changed': (sheet: Sheet) =>
    mapReadings(sheet, (text, row) =>
      row % 5 === 2 ? (Number(text) * 1.01).toFixed(decimalsOf(text)) : text,
    ),
  'copied in another order': (sheet: Sheet) => ({ ...sheet, rows: sheet.rows.toReversed() }),
} as const satisfies Readonly<Record<string, (sheet: Sheet) => Sheet>>;
