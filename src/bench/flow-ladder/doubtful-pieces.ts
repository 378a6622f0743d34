import { doubtfulInSeries, type PossibleScatter, type StepOfOthers } from '../doubt/doubtful-in-series.ts';
import { type DoubtfulReading, relativeDoubts } from '../doubt/doubtful-reading.ts';
import { usualMassResolution } from '../facts/instrument-facts.ts';
import type { Observations } from '../sheet/observations.ts';
import type { FlowLadderRun } from './flow-ladder-facts.ts';

/** Relative scatter of pieces that are delivered in full, and what it counts in degrees of freedom (common practice, no source). */
const usual = { scatter: 0.005, freedom: 4 };
/** Scatters past the onset of a piece that is missing all, and how likely they are beforehand (common practice, no source). */
const scattersPastOnset = [
  { scatter: 0.005, prior: 0.6 },
  { scatter: 0.02, prior: 0.2 },
  { scatter: 0.06, prior: 0.2 },
] as const;
/** What a piece of the plateau may be missing. */
const plateau = 0.03;
const leastDeviation = 0.025;
const fewestSteps = 4;
/** How many times the fall behind it the first step may lie above the second: an onset does not level off before it begins. */
const firstWithin = 3;

/**
 * The pieces of a ladder that weigh what neither their repeats nor the neighbouring steps let expect: the mass per fed length
 * does not rise with the flow, and it scatters the more the more is missing: how much, the repeats past the onset tell (Bayes'
 * theorem over a few scatters). Pieces from a halt on tell nothing.
 */
export function doubtfulPieces({ columns, rows }: Observations, run: FlowLadderRun): DoubtfulReading[] {
  const { commandedFlow = [], feedLength = [], extrudedMass = [] } = columns;
  const end = run.haltedAt ?? Number.POSITIVE_INFINITY;
  const pieces = rows.flatMap((row, index) => {
    const [x = Number.NaN, fed = Number.NaN, mass = Number.NaN] = [
      commandedFlow[index],
      feedLength[index],
      extrudedMass[index],
    ];
    return x < end && mass > 0 && fed > 0 ? [{ row, x, y: Math.log(mass / fed), fed }] : [];
  });
  if (new Set(pieces.map(({ x }) => x)).size < fewestSteps) return [];
  const shortest = Math.min(...pieces.map(({ fed }) => fed));
  const resolution = run.massResolution ?? usualMassResolution;
  const found = doubtfulInSeries(pieces, {
    course: 'falling',
    endsWithin: { first: firstWithin },
    scatterAt: scatterOfPieces,
    resolutionAt: (level) => resolution / (Math.exp(level) * shortest),
    least: leastDeviation,
  });
  const fedOf = new Map(pieces.map(({ row, fed }) => [row, fed]));
  return relativeDoubts('extrudedMass', found).map((doubt) => {
    const fed = fedOf.get(doubt.row) ?? Number.NaN;
    const rival = doubt.rival && {
      ...doubt.rival,
      found: doubt.rival.found * (fedOf.get(doubt.rival.row) ?? Number.NaN),
    };
    return { ...doubt, found: doubt.found * fed, expected: doubt.expected * fed, rival };
  });
}

/** How far a piece may be from a level of the logarithm of the mass per fed length, by what the others do. */
function scatterOfPieces(level: number, others: readonly StepOfOthers[]): PossibleScatter[] {
  const top = topOf(others);
  const missingOf = (mean: number) => Math.max(0, top - mean);
  const full = scatterInFull(others.filter(({ mean }) => missingOf(mean) <= plateau));
  const missing = missingOf(level);
  const { freedom } = full;
  if (missing <= plateau) return [{ probability: 1, deviation: Math.sqrt(full.variance), freedom }];
  const past = others.filter(({ mean, count }) => missingOf(mean) > plateau && count > 1);
  const logs = scattersPastOnset.map(({ scatter, prior }) =>
    past.reduce((sum, { mean, count, squares }) => {
      const variance = full.variance + (scatter * missingOf(mean)) ** 2;
      return sum - ((count - 1) * Math.log(variance) + squares / variance) / 2;
    }, Math.log(prior)),
  );
  const best = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - best));
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  return scattersPastOnset.map(({ scatter }, index) => ({
    probability: (weights[index] ?? 0) / whole,
    deviation: Math.sqrt(full.variance + (scatter * missing) ** 2),
    freedom,
  }));
}

/** The level of full delivery: the median of the upper half, which one reading that is off does not move. */
function topOf(steps: readonly StepOfOthers[]): number {
  const ordered = steps.map(({ mean }) => mean).sort((one, other) => other - one);
  return ordered[Math.floor((ordered.length - 1) / 4)] ?? Number.NaN;
}

/** Scatter of pieces that are delivered in full, from repeats and from one step to the next. */
function scatterInFull(steps: readonly StepOfOthers[]) {
  const repeats = steps.reduce((sum, { count }) => sum + count - 1, 0);
  const within = steps.reduce((sum, step) => sum + step.squares, 0);
  const leaps = steps.slice(1).map(({ mean, count }, index) => {
    const before = steps[index];
    return before === undefined ? 0 : (mean - before.mean) ** 2 / (1 / count + 1 / before.count);
  });
  // Neighbouring leaps share a step, so that two of them tell as much as one.
  const freedom = usual.freedom + repeats + leaps.length / 2;
  const between = leaps.reduce((sum, leap) => sum + leap, 0) / 2;
  return { variance: (usual.freedom * usual.scatter ** 2 + within + between) / freedom, freedom };
}
