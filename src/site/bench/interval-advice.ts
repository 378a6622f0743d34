import { methodOf } from '../../bench/methods.ts';
import { type ReductionInputs, reductionQuestion, resultsOf } from '../../bench/reduce-trial.ts';
import type { ReducedResult } from '../../bench/reduction.ts';
import type { Observations } from '../../bench/sheet/observations.ts';
import { resultTexts } from '../../report/reduction/reduction-document.ts';
import { inPrint } from '../../units/in-print.ts';
import type { Draft } from './draft.ts';
import { trialFiles, trialIn } from './draft-files.ts';
import type { BenchSession } from './session.ts';

/** What a change of the readings would make of the interval. */
interface ChangedInterval {
  /** Names of the rows that it is about. */
  readonly rows: readonly string[];
  /** The interval with the change, printed. */
  readonly interval: string;
  /** Its width as a share of what it is now. */
  readonly share: number;
}

/** Which reading widens the interval most, and which setting would narrow it most if it were read again. */
export interface IntervalAdvice {
  readonly widest: ChangedInterval | null;
  readonly again: ChangedInterval | null;
}

/** A change below this share of the width is none that a bench should act on (common practice, no source). */
const worthTelling = 0.03;

/**
 * Reduces the readings without each row in turn, and with those of each setting read once more as they were. It stops after every
 * reduction, so that whoever asks can do something else in between. Null where there is no interval.
 */
export function* intervalAdvice(
  session: BenchSession,
  draft: Draft,
): Generator<undefined, IntervalAdvice | null> {
  const files = trialFiles(session, draft);
  if (files.rows.length === 0) return null;
  const { registry } = session.withFiles([files.trial, files.sheet]);
  const trial = trialIn(registry, files);
  const question = trial === undefined ? null : reductionQuestion(registry, trial.id);
  if (!question?.ok) return null;
  const { inputs } = question.value;
  const now = firstResult(inputs);
  if (now === null) return null;
  const without: ChangedInterval[] = [];
  for (const [place, row] of files.rows.entries()) {
    without.push(
      ...changed(
        inputs,
        now,
        [row],
        keptRows(inputs[1], (each) => each !== place),
      ),
    );
    yield;
  }
  const again: ChangedInterval[] = [];
  for (const places of settingsOf(inputs)) {
    const rows = places.map((place) => files.rows[place] ?? '');
    again.push(...changed(inputs, now, rows, withCopies(inputs[1], places)));
    yield;
  }
  return { widest: narrowest(without), again: narrowest(again) };
}

function narrowest(changes: readonly ChangedInterval[]): ChangedInterval | null {
  const [first] = changes
    .filter(({ share }) => share < 1 - worthTelling)
    .toSorted((one, other) => one.share - other.share);
  return first ?? null;
}

function changed(
  [method, , run]: ReductionInputs,
  now: ReducedResult,
  rows: readonly string[],
  observations: Observations,
): ChangedInterval[] {
  const result = firstResult([method, observations, run]);
  if (result === null || result.quantity !== now.quantity) return [];
  const { results, openWords } = methodOf(method);
  const { interval } = resultTexts(result, results[result.quantity], openWords);
  return [{ rows, interval: inPrint(interval), share: widthOf(result) / widthOf(now) }];
}

/** The first result with both ends; null where there is none. */
function firstResult(inputs: ReductionInputs): ReducedResult | null {
  const reduced = resultsOf(inputs);
  const [first] = reduced.ok ? reduced.value.results : [];
  return first === undefined || !(widthOf(first) > 0) ? null : first;
}

function widthOf({ interval: { low, high } }: ReducedResult): number {
  return low === null || high === null ? Number.NaN : high - low;
}

function keptRows({ columns, rows }: Observations, isKept: (place: number) => boolean): Observations {
  const kept = <Value>(values: readonly Value[]) => values.filter((_, place) => isKept(place));
  return {
    columns: Object.fromEntries(Object.entries(columns).map(([name, values]) => [name, kept(values)])),
    rows: kept(rows),
  };
}

function withCopies({ columns, rows }: Observations, places: readonly number[]): Observations {
  const copied = (values: readonly number[]) => [
    ...values,
    ...places.map((place) => values[place] ?? Number.NaN),
  ];
  return {
    columns: Object.fromEntries(Object.entries(columns).map(([name, values]) => [name, copied(values)])),
    rows: copied(rows),
  };
}

/** Places of the rows of each setting: those that agree in all that is set. */
function settingsOf([method, { columns, rows }]: ReductionInputs): number[][] {
  const { read } = methodOf(method);
  const given = Object.entries(columns).filter(([name]) => !read.includes(name));
  const bySetting = new Map<string, number[]>();
  for (const place of rows.keys()) {
    const key = given.map(([, values]) => values[place]).join(' ');
    bySetting.set(key, [...(bySetting.get(key) ?? []), place]);
  }
  return [...bySetting.values()];
}
