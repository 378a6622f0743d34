import type { Profile } from '../../registry/profile.ts';
import { insteadOfNext } from './instead-of-next.ts';
import { countsOf, type ToldRow, tellingOf, toldRows } from './told-rows.ts';

/** Rows of a sheet that stand above in it already, one after the other. */
interface RepeatedRows {
  readonly rows: readonly ToldRow[];
  /** The rows that they repeat. */
  readonly originals: readonly ToldRow[];
  /** Whether only what was read is the same, at other settings. */
  readonly isOfReadings: boolean;
  /** Whether they stand right below what they repeat. */
  readonly isBeside: boolean;
}

/** What no honest sheet repeats by chance (common practice, no source). */
export const leastRepeated = {
  /** Figures of a row that stands once more where nothing else does: 500 steps of its last digit. */
  figures: Math.log10(500),
  /** The same where every other setting stands equally often, more than once: 200 steps. */
  figuresAmongEquals: Math.log10(200),
  /** Settings that stand equally often beside one that stands once more: that layout tells by itself. */
  equals: 4,
  /** Of fewer steps a third reading decides between two others that differ, and is one of them: a hundred steps. */
  figuresOfThird: 2,
  /** Rows that are the same as others one after the other, and telling figures in them. */
  rows: 3,
  block: 2.5,
  /** Telling figures in readings that come again at other settings. */
  readings: 4.5,
} as const;

/** The stretches of a sheet that are told in it before, and are no repeats of a bench. */
export function repeatedRows(trial: Profile<'trial'>): readonly RepeatedRows[] {
  const rows = toldRows(trial);
  const found = repeatedStretches(rows);
  const instead = found.length === 0 ? insteadOfNext(rows) : null;
  return instead === null ? found : [{ ...instead, isOfReadings: false, isBeside: true }];
}

function repeatedStretches(rows: readonly ToldRow[]): readonly RepeatedRows[] {
  const isRepeated = repeatsIn(rows);
  const [lastOf, lastRead] = [new Map<string, number>(), new Map<string, number>()];
  const found: RepeatedRows[] = [];
  let told = 0;
  for (const [at, { all, read }] of rows.entries()) {
    if (at >= told) {
      const block = stretchAt(rows, at, lastOf.get(all), (row) => row.all);
      const readings = stretchAt(rows, at, lastRead.get(read), (row) => row.read);
      const repeated = [block, readings].find(isRepeated);
      if (repeated !== undefined) found.push(repeated);
      told = at + (repeated?.rows.length ?? 0);
    }
    lastOf.set(all, at);
    lastRead.set(read, at);
  }
  return found;
}

/** Tells of a stretch of a sheet whether it is no repeat of a bench. */
function repeatsIn(rows: readonly ToldRow[]): (stretch: RepeatedRows) => boolean {
  const counts = countsOf(rows);
  const goesBack = waysBack(rows) === 1;
  return (stretch) =>
    isNoChance(stretch, counts) ||
    (!stretch.isOfReadings &&
      (isOneMore(stretch, rows, counts) || (goesBack && isOnlyWayBack(stretch, rows, counts))));
}

/** Rows after which a stretch is long enough to be found. */
const longest = 50;

/** The rows from a place on that say the same as those from an earlier one on. */
function stretchAt(
  rows: readonly ToldRow[],
  at: number,
  from: number | undefined,
  textOf: (row: ToldRow) => string,
): RepeatedRows {
  let length = 0;
  const most = from === undefined ? 0 : Math.min(longest, at - from, rows.length - at);
  while (length < most && isSame(rows[at + length], rows[(from ?? 0) + length], textOf)) length++;
  const [repeats, originals] = [at, from ?? 0].map((start) => rows.slice(start, start + length));
  const isOfReadings = repeats?.some(({ all }, index) => all !== originals?.[index]?.all) ?? false;
  return {
    rows: repeats ?? [],
    originals: originals ?? [],
    isOfReadings,
    isBeside: from !== undefined && from + length === at,
  };
}

function isSame(
  one: ToldRow | undefined,
  other: ToldRow | undefined,
  textOf: (row: ToldRow) => string,
): boolean {
  return one !== undefined && other !== undefined && textOf(one) === textOf(other);
}

function isNoChance(
  { rows, isOfReadings, isBeside }: RepeatedRows,
  counts: ReadonlyMap<string, number>,
): boolean {
  if (isOfReadings)
    return rows.every(({ telling }) => telling > 0) && tellingOf(rows) >= leastRepeated.readings;
  if (rows.length >= leastRepeated.rows && tellingOf(rows) >= leastRepeated.block) return true;
  return rows.length > 0 && (isBeside || rows.length > 1) && standOut(rows, counts);
}

/** Whether the settings of some rows stand more often in the sheet than any other, and would not without these rows. */
function standOut(rows: readonly ToldRow[], counts: ReadonlyMap<string, number>): boolean {
  const repeats = countsOf(rows);
  const others = [...counts].flatMap(([set, count]) => (repeats.has(set) ? [] : [count]));
  const usual = Math.max(0, ...others);
  const isEven = others.every((count) => count === usual) || rows.length > 1;
  const least = isEven && usual > 1 ? leastRepeated.figuresAmongEquals : leastRepeated.figures;
  const isOfOneInstant = usual === 1 && rows.every(({ isOfInstant }) => isOfInstant);
  if (usual === 0 || (!isOfOneInstant && rows.some(({ figures }) => figures < least))) return false;
  const own = [...repeats].map(([set, count]) => ({
    all: counts.get(set) ?? 0,
    before: (counts.get(set) ?? 0) - count,
  }));
  return own.some(({ all }) => all > usual) && own.every(({ before }) => before <= usual);
}

/** Whether a row is one more of a setting where all other settings stand equally often, more than once. */
function isOneMore(
  { rows, isBeside }: RepeatedRows,
  all: readonly ToldRow[],
  counts: ReadonlyMap<string, number>,
): boolean {
  const [row, more] = rows;
  if (row === undefined || more !== undefined || !isBeside) return false;
  const usual = (counts.get(row.set) ?? 0) - 1;
  if (usual < 2 || counts.size <= leastRepeated.equals) return false;
  const isEven = [...counts].every(([set, count]) => set === row.set || count === usual);
  const mayDecide = row.figures < leastRepeated.figuresOfThird;
  return isEven && (!mayDecide || all.every((each) => each.set !== row.set || each.all === row.all));
}

/**
 * Whether rows that stand right below those that they repeat are all that keeps the settings of a sheet from being in order, and
 * begin and end within the repeats of a setting, as no plate that is printed again does.
 */
function isOnlyWayBack(
  { rows, isBeside }: RepeatedRows,
  all: readonly ToldRow[],
  counts: ReadonlyMap<string, number>,
): boolean {
  const [first, last] = [rows[0], rows.at(-1)];
  // What goes on to the end may be another pass.
  if (!isBeside || first === undefined || last === undefined || last === all.at(-1)) return false;
  const most = [...counts.values()].filter((count) => count > 1).length;
  if (2 * most <= counts.size || first.set === last.set) return false;
  const [from, to] = [all.indexOf(first), all.indexOf(last)];
  return waysBack(all.toSpliced(from, to - from + 1)) === 0;
}

/** How often the settings of a sheet go against the way that they go in most. */
function waysBack(rows: readonly ToldRow[]): number {
  const turns = rows.slice(1).map(({ level }, index) => Math.sign(level - (rows[index]?.level ?? level)));
  const [down, up] = [-1, 1].map((way) => turns.filter((turn) => turn === way).length);
  return Math.min(down ?? 0, up ?? 0);
}
