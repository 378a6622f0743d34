import { doubtfulInSeries, type StepOfOthers } from '../doubt/doubtful-in-series.ts';
import { type DoubtfulReading, relativeDoubts } from '../doubt/doubtful-reading.ts';
import { usualMassResolution } from '../facts/instrument-facts.ts';
import type { Observations } from '../sheet/observations.ts';
import type { FlowLadderRun } from './flow-ladder-facts.ts';

/** Relative scatter of pieces that are delivered in full, and what it counts in degrees of freedom (common practice, no source). */
const usual = { scatter: 0.005, freedom: 4 };
/** Scatter past the onset, of a piece that is missing all, and what it counts in degrees of freedom (common practice, no source). */
const usualPastOnset = { scatter: 0.03, freedom: 6 };
/** What a piece of the plateau may be missing. */
const plateau = 0.03;
const leastDeviation = 0.025;
const fewestSteps = 4;

/**
 * The pieces of a ladder that weigh what neither their repeats nor the neighbouring steps let expect: the mass per fed length
 * does not rise with the flow, and it scatters the more the more is missing. Pieces from a halt on tell nothing.
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
    scatterAt: scatterOfPieces,
    resolutionAt: (level) => resolution / (Math.exp(level) * shortest),
    least: leastDeviation,
  });
  const fedOf = new Map(pieces.map(({ row, fed }) => [row, fed]));
  return relativeDoubts('extrudedMass', found).map((doubt) => {
    const fed = fedOf.get(doubt.row) ?? Number.NaN;
    return { ...doubt, found: doubt.found * fed, expected: doubt.expected * fed };
  });
}

/** How far a piece may be from a level of the logarithm of the mass per fed length, by what the others do. */
function scatterOfPieces(level: number, others: readonly StepOfOthers[]) {
  const top = topOf(others);
  const missingOf = (mean: number) => Math.max(0, top - mean);
  const full = scatterInFull(others.filter(({ mean }) => missingOf(mean) <= plateau));
  const missing = missingOf(level);
  if (missing <= plateau) return { deviation: Math.sqrt(full.variance), freedom: full.freedom };
  const past = others.filter(({ mean, count }) => missingOf(mean) > plateau && count > 1);
  const freedom = past.reduce((sum, { count }) => sum + count - 1, usualPastOnset.freedom);
  const squares = past.reduce(
    (sum, { mean, count, squares: own }) =>
      sum + Math.max(0, own - (count - 1) * full.variance) / missingOf(mean) ** 2,
    usualPastOnset.freedom * usualPastOnset.scatter ** 2,
  );
  const growing = (squares / freedom) * missing ** 2;
  return {
    deviation: Math.sqrt(full.variance + growing),
    freedom: Math.min(freedom, full.freedom + past.length),
  };
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
