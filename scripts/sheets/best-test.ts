import { methodOf } from '../../src/bench/methods.ts';
import type { HonestSheet } from './honest-sheets.ts';
import type { Sheet } from './sheet-text.ts';

/** Runs at a bench that tell what its readings are on average and how they spread, and further ones that are judged. */
const [learned, judged] = [100, 20];
/** Share of honest sheets in which a test may find something. */
const falseAlarms = 0.02;

/** What a reading is on average and how it spreads, as the ones who know the bench know it. */
interface Known {
  readonly expected: number;
  readonly deviation: number;
}

/**
 * Whether an altered sheet is found by a test that knows the truth of every bench, how each reading spreads and by which
 * share one of them was altered: about what can be found at best with false alarms in as few honest sheets, if readings scatter
 * normally, each by itself. Mean and spread come from further runs at the bench. Source: J. Neyman and E. S. Pearson, Philosophical Transactions of the Royal Society A 231 (1933)
 * 289-337.
 */
export function bestTest(
  sheets: readonly HonestSheet[],
  share: number,
): (honest: HonestSheet, altered: Sheet) => boolean {
  const known = new Map(sheets.map((honest) => [honest, knownOf(honest)]));
  const evidence = (honest: HonestSheet, sheet: Sheet) =>
    logLikelihoodRatio(readingsOf(sheet), known.get(honest) ?? [], share);
  const honestEvidence = sheets.flatMap((honest) =>
    Array.from({ length: judged }, (_, run) => evidence(honest, honest.again(learned + 1 + run))),
  );
  honestEvidence.sort((one, other) => one - other);
  const threshold = honestEvidence[Math.floor((1 - falseAlarms) * honestEvidence.length)] ?? 0;
  return (honest, altered) => evidence(honest, altered) > threshold;
}

function readingsOf({ method, columns, rows }: Sheet): number[] {
  const { read } = methodOf(method);
  return rows.flatMap((cells) =>
    cells.flatMap((text, column) => (read.includes(columns[column] ?? '') ? [Number(text)] : [])),
  );
}

function knownOf({ again }: HonestSheet): Known[] {
  const runs = Array.from({ length: learned }, (_, run) => readingsOf(again(run + 1)));
  return (runs[0] ?? []).map((_, place) => {
    const readings = runs.map((run) => run[place] ?? Number.NaN);
    const expected = readings.reduce((sum, each) => sum + each, 0) / learned;
    const squares = readings.reduce((sum, each) => sum + (each - expected) ** 2, 0);
    return { expected, deviation: Math.sqrt(squares / (learned - 1)) };
  });
}

/** Spread of what is read alike each time, as a share of it. */
const leastSpread = 1e-6;

/** How much likelier the readings are where one of them, nobody knows which, lies off by the share, up or down. */
function logLikelihoodRatio(readings: readonly number[], known: readonly Known[], share: number): number {
  const logs = known.flatMap(({ expected, deviation }, place) => {
    // What reads 0 each time is not altered by a share of it.
    if (expected === 0) return [];
    const spread = Math.max(deviation, leastSpread * Math.abs(expected));
    const [off, shift] = [((readings[place] ?? expected) - expected) / spread, (share * expected) / spread];
    return [shift * off - shift ** 2 / 2, -shift * off - shift ** 2 / 2];
  });
  const largest = Math.max(...logs);
  return largest + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - largest), 0) / logs.length);
}
