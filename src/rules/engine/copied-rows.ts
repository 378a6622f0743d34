import { isEarlier } from '../../evidence/same-runs.ts';
import { groupedBy } from '../../registry/grouped-by.ts';
import type { Profile } from '../../registry/profile.ts';
import { oncePerRegistry, type Registry } from '../../registry/registry.ts';
import { countsOf, type ToldRow, tellingOf, toldRows } from './told-rows.ts';

/** Telling figures, and rows, that no two runs have in common by chance (common practice, no source). */
export const leastCopied = {
  /** Telling figures of equal rows, wherever they stand, less those of the many ways to choose them. */
  rows: 4,
  /** Of two whole sheets of different pairings but for one row, which give the same only where all else agrees, too. */
  ofOtherPairing: 2,
  /** Of those, in equal rows: fewer are in many sheets. */
  ofAny: 1,
  /** What flow ladders of two machines or filaments tell besides: levels differ by 1 %, not by 0.2 %, and masses past the limit by 3 %. */
  ofOtherLadder: Math.log10(0.01 / 0.002) + Math.log10(0.03 / 0.002),
  /** Of readings one after the other, at whatever settings. */
  run: 6,
  /** Of readings that are those of another sheet by one factor. */
  scaled: 6,
  /** Rows that are the same at the same places of both sheets, and the figures by which chance does not explain that. */
  whole: 8,
  wholeFigures: 3.5,
} as const;

/** What a trial has in common with an earlier one. */
export interface CopiedRows {
  readonly other: Profile<'trial'>;
  readonly count: number;
  /** What the readings of the other trial are to be multiplied by. */
  readonly factor: number;
}

/** The earlier trial, by date and id, that a trial has most readings in common with, where these are too many for chance. */
export function copiedRows(trial: Profile<'trial'>, registry: Registry): CopiedRows | null {
  const index = trialsByKey(registry);
  const common = new Map<Profile<'trial'>, number>();
  for (const [key, telling] of keysOf(trial)) {
    for (const other of index.get(key) ?? [])
      if (other.id !== trial.id && isEarlier(other, trial))
        common.set(other, (common.get(other) ?? 0) + telling);
  }
  const copied = [...common].flatMap(([other, telling]) =>
    telling < leastOf(trial, other) ? [] : (compared(trial, other) ?? []),
  );
  return copied.toSorted((one, other) => other.count - one.count)[0] ?? null;
}

/** Telling figures of equal rows below which two trials are not looked at more closely. */
function leastOf(trial: Profile<'trial'>, other: Profile<'trial'>): number {
  if (!isOtherPairing(trial, other)) return leastCopied.rows;
  return Math.max(leastCopied.ofAny, leastCopied.ofOtherPairing - tellingOfPairings(trial, other));
}

function isOtherPairing({ data: one }: Profile<'trial'>, { data: other }: Profile<'trial'>): boolean {
  return (['machine', 'nozzle', 'filament'] as const).some((key) => one[key] !== other[key]);
}

/** More trials than this share a row by chance alone, and others of their rows tell copies. */
const mostHolders = 50;

/** Trials by what must be the same in two of them before they are looked at more closely, the earliest ones of many. */
const trialsByKey = oncePerRegistry((registry) => {
  const index = new Map<string, Profile<'trial'>[]>();
  const inOrder = [...registry.trial.values()].sort((one, other) => (isEarlier(one, other) ? -1 : 1));
  for (const trial of inOrder) {
    for (const key of keysOf(trial).keys()) {
      const known = index.get(key);
      if (known === undefined) index.set(key, [trial]);
      else if (known.length < mostHolders) known.push(trial);
    }
  }
  return index;
});

/** Rows in a stretch of readings that is looked up. */
const stretch = 4;

/** What two trials that are copies have in common, each with the telling figures in it. */
function keysOf(trial: Profile<'trial'>): ReadonlyMap<string, number> {
  const { method } = trial.data;
  const rows = toldRows(trial);
  const keys = new Map<string, number>();
  for (const { all, telling } of rows) if (telling > 0) keys.set(`${method} row ${all}`, telling);
  for (let from = 0; from + stretch <= rows.length; from++) {
    const run = rows.slice(from, from + stretch);
    if (isTelling(run)) keys.set(`${method} run ${run.map(({ read }) => read).join('; ')}`, leastCopied.rows);
  }
  if (isTellingCourse(rows)) keys.set(`${method} course ${courseOf(rows)}`, leastCopied.rows);
  for (let from = 0; from + leastCopied.whole <= rows.length; from++) {
    // Short, since there are many: the settings are compared afterwards.
    const part = rows.slice(from, from + leastCopied.whole).map(({ readings }) => readings.join());
    keys.set(`${method} part from ${from}: ${part.join(' ')}`, leastCopied.rows);
  }
  return keys;
}

function isTelling(rows: readonly ToldRow[]): boolean {
  return rows.every(({ telling }) => telling > 0);
}

/** The settings of a sheet, and which reading is larger than which: both stay where all readings are multiplied. */
function courseOf(rows: readonly ToldRow[]): string {
  const first = rows.map(({ readings }) => readings[0] ?? 0);
  const inOrder = [...new Set(first)].sort((one, other) => one - other);
  const places = new Map(inOrder.map((value, place) => [value, place]));
  return rows.map(({ set, readings }) => `${set}: ${places.get(readings[0] ?? 0)}`).join('; ');
}

function compared(trial: Profile<'trial'>, other: Profile<'trial'>): CopiedRows | null {
  const [rows, others] = [toldRows(trial), toldRows(other)];
  const theirs = new Set(others.map(({ all }) => all));
  const smaller = Math.min(rows.length, others.length);
  const same = rows.filter(({ all }) => theirs.has(all));
  const inPlace = rows.filter(({ all }, index) => all === others[index]?.all);
  const isWhole =
    inPlace.length >= leastCopied.whole &&
    figuresOfPlaces(rows, inPlace.length, smaller) >= leastCopied.wholeFigures;
  const telling = Math.max(
    tellingOf(same) - tellingOfRepeats(same, others) - waysToChoose(smaller, same.length),
    tellingOf(inPlace) - waysToChoose(smaller, inPlace.length),
  );
  const isOfOther =
    isOtherPairing(trial, other) &&
    inPlace.length >= Math.max(leastRows, smaller - 1) &&
    tellingOf(inPlace) - waysToChoose(smaller, inPlace.length) + tellingOfPairings(trial, other) >=
      leastCopied.ofOtherPairing;
  if ((same.length >= leastRows && telling >= leastCopied.rows) || isWhole || isOfOther)
    return { other, count: same.length, factor: 1 };
  const run = longestRun(rows, others);
  if (tellingOf(run) >= leastCopied.run) return { other, count: run.length, factor: 1 };
  const factor = factorBetween(rows, others);
  return factor === null ? null : { other, count: rows.length, factor };
}

/** Another nozzle alone is fed as much below its limit. */
function tellingOfPairings({ data: one }: Profile<'trial'>, { data: other }: Profile<'trial'>): number {
  const isOtherFeed = one.machine !== other.machine || one.filament !== other.filament;
  return one.method === 'flowLadder' && isOtherFeed ? leastCopied.ofOtherLadder : 0;
}

/** Rows that are few enough to be a coincidence of some other kind (common practice, no source). */
const leastRows = 2;

/** Logarithm of the number of ways to choose so many rows of a sheet. */
function waysToChoose(all: number, some: number): number {
  let figures = 0;
  for (let left = 0; left < Math.min(some, all - some); left++)
    figures += Math.log10((all - left) / (left + 1));
  return figures;
}

/** The figures by which rows are likelier to be the same as one of several repeats: a tenth for ten of them. */
function tellingOfRepeats(rows: readonly ToldRow[], others: readonly ToldRow[]): number {
  const counts = countsOf(others);
  return rows.reduce((figures, { set }) => figures + Math.log10(counts.get(set) ?? 1), 0);
}

/** By how many figures so many rows of a sheet are unlikely to come out once more: each does as often as repeats in it agree. */
function figuresOfPlaces(rows: readonly ToldRow[], count: number, ofAll: number): number {
  const repeats = [...groupedBy(rows, ({ set }) => set).values()].flatMap((group) =>
    group.slice(1).map(({ read }, index) => read === group[index]?.read),
  );
  const agreeing = repeats.filter(Boolean).length;
  // Grades of one figure agree in many sheets, so that without repeats they tell nothing.
  const besides = rows.every(({ figures }) => figures > 1) ? 2 : 1;
  return -count * Math.log10((agreeing + 1) / (repeats.length + besides)) - waysToChoose(ofAll, count);
}

/** Rows after which a stretch is long enough to be found. */
const longest = 50;

/** The longest stretch of readings, up to some length, that stands in both sheets one after the other. */
function longestRun(rows: readonly ToldRow[], others: readonly ToldRow[]): readonly ToldRow[] {
  const places = new Map(others.map(({ read }, place) => [read, place]));
  let best: readonly ToldRow[] = [];
  for (const [from, { read }] of rows.entries()) {
    const there = places.get(read) ?? others.length;
    let length = 0;
    while (length < longest && isSameReading(rows[from + length], others[there + length])) length++;
    if (length > best.length) best = rows.slice(from, from + length);
  }
  return best;
}

function isSameReading(one: ToldRow | undefined, other: ToldRow | undefined): boolean {
  return one !== undefined && other !== undefined && one.telling > 0 && one.read === other.read;
}

/** Whether readings that are multiplied still tell enough: rounded twice, each may lie on one of two steps. */
function isTellingCourse(rows: readonly ToldRow[]): boolean {
  return tellingOf(rows) - rows.length * Math.log10(2) >= leastCopied.scaled;
}

/** The factor between the readings of two sheets with the same settings, where it is one for all of them but for rounding. */
function factorBetween(rows: readonly ToldRow[], others: readonly ToldRow[]): number | null {
  if (rows.length !== others.length || !isTellingCourse(rows)) return null;
  if (rows.some(({ set, readings }, index) => set !== others[index]?.set || readings.length !== 1))
    return null;
  const pairs = rows.map(
    ({ readings }, index) => [readings[0] ?? 0, others[index]?.readings[0] ?? 0] as const,
  );
  const [own, theirs] = [0, 1].map((side) => pairs.reduce((sum, pair) => sum + (pair[side] ?? 0), 0));
  const factor = (own ?? 0) / (theirs ?? 0);
  const slack = 0.51 * (stepOf(rows) + Math.abs(factor) * stepOf(others));
  return pairs.every(([one, other]) => Math.abs(one - factor * other) <= slack) ? factor : null;
}

function stepOf(rows: readonly ToldRow[]): number {
  const decimals = rows.flatMap(({ readings }) =>
    readings.map((value) => String(value).split('.')[1]?.length ?? 0),
  );
  return 10 ** -Math.max(...decimals);
}
