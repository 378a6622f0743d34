import { methodOf } from '../../bench/methods.ts';
import { trialObservations } from '../../bench/sheet/trial-observations.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Dimension } from '../../units/dimension.ts';

/** A row of readings as it is compared with others. */
export interface ToldRow {
  /** All that it tells. */
  readonly all: string;
  /** What was set. */
  readonly set: string;
  /** The first of it as a number, in its canonical unit. */
  readonly level: number;
  /** What was read. */
  readonly read: string;
  /** The numbers that were read, in canonical units. */
  readonly readings: readonly number[];
  /** Significant figures of what was read, as the logarithm of how many steps of its last digit it is. */
  readonly figures: number;
  /** Whether what was set is a moment of the run, which no bench reads twice. */
  readonly isOfInstant: boolean;
  /** Figures that nobody expects to come out again: the chance that they do is one in ten to that power. */
  readonly telling: number;
  /** The line of the file, or the place in the list counted from 1. */
  readonly row: number;
}

/**
 * Standard deviations by which two readings of one thing differ at best: a share of the reading, less where one spool is weighed
 * again and again, and of temperatures so many kelvin (common practice, no source).
 */
const scatter = { share: 0.002, ofOneSpool: 0.00002, temperature: 0.1 };

/** The chance that two normal readings fall on one step, over how many steps they scatter by: 1/(2 sqrt(pi)). */
const onOneStep = 1 / (2 * Math.sqrt(Math.PI));

/** For the pages of rules that go by telling figures. */
export const sourceOfTelling =
  'The chance that two normal readings fall on one step of a display; that benches repeat to 0.2 %, weighings of one spool to 0.002 % and temperatures to 0.1 K at best is common practice, no source.';
export const formulaOfTelling =
  'F sum of lg(2 sqrt(pi) s/d) over the readings in different rows, s = 0.002 y, 0.00002 y of a spool that dries, or 0.1 K, y reading, d step of its last digit';

const known = new WeakMap<Profile<'trial'>, readonly ToldRow[]>();

/** The readings of a trial by any method, in the order in which they were written; none where they cannot be read. */
export function toldRows(trial: Profile<'trial'>): readonly ToldRow[] {
  const before = known.get(trial);
  if (before !== undefined) return before;
  const told = tell(trial);
  known.set(trial, told);
  return told;
}

function tell(trial: Profile<'trial'>): readonly ToldRow[] {
  const { columns: inline, file } = trial.data.observations;
  // It is not clear which readings count, and that has a finding of its own.
  if (inline !== undefined && file !== undefined) return [];
  const method = methodOf(trial.data.method);
  const observations = trialObservations(trial, method);
  if (!observations.ok) return [];
  const share = method.method === 'dryingCurve' ? scatter.ofOneSpool : scatter.share;
  const columns = Object.entries(observations.value.columns).map(([name, values]) =>
    columnOf(name, values, method.columns[name], method.read.includes(name), share),
  );
  const read = columns.filter(({ isRead }) => isRead);
  const set = columns.filter(({ isRead }) => !isRead);
  const isOfInstant = set.some(({ name }) => name === 'elapsedTime');
  return observations.value.rows.map((row, index) => ({
    all: textAt(columns, index),
    set: textAt(set, index),
    level: set[0]?.values[index] ?? Number.NaN,
    read: textAt(read, index),
    readings: read.map(({ values }) => values[index] ?? Number.NaN),
    figures: sum(read.map(({ figures }) => figures[index] ?? 0)),
    telling: sum(read.map(({ telling }) => telling[index] ?? 0)),
    isOfInstant,
    row,
  }));
}

interface Column {
  readonly name: string;
  readonly isRead: boolean;
  readonly values: readonly number[];
  readonly figures: readonly number[];
  readonly telling: readonly number[];
}

function columnOf(
  name: string,
  values: readonly number[],
  dimension: Dimension | undefined,
  isRead: boolean,
  share: number,
): Column {
  // Conversion to canonical units leaves errors of rounding behind the figures that were written.
  const plain = values.map((value) => Number(value.toPrecision(9)));
  const step = 10 ** -Math.max(...plain.map(decimalsOf));
  const figures = plain.map((value) => Math.max(0, Math.log10(Math.abs(value) / step)));
  const telling = plain.map((value) => {
    const spread = dimension === 'temperature' ? scatter.temperature : share * Math.abs(value);
    return Math.max(0, Math.log10(spread / step / onOneStep));
  });
  return { name, isRead, values: plain, figures, telling };
}

function decimalsOf(value: number): number {
  return String(value).split('.')[1]?.length ?? 0;
}

function textAt(columns: readonly Column[], index: number): string {
  return columns.map(({ name, values }) => `${name} ${values[index]}`).join(', ');
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((all, each) => all + each, 0);
}

/** Telling figures in different rows. */
export function tellingOf(rows: readonly ToldRow[]): number {
  return sum([...new Map(rows.map(({ all, telling }) => [all, telling])).values()]);
}

/** How often each setting stands in a sheet. */
export function countsOf(rows: readonly ToldRow[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { set } of rows) counts.set(set, (counts.get(set) ?? 0) + 1);
  return counts;
}
