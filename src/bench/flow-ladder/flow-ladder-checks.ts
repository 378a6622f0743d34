import { describe } from '../../statistics/describe.ts';
import { formatNumber, formatQuantity } from '../../units/format-quantity.ts';
import type { BenchProblem } from '../bench-problem.ts';
import type { Observations } from '../sheet/observations.ts';
import { notPositiveReadings, repeatedTable, tooManyValues } from '../sheet/reading-checks.ts';
import type { FlowLadderSettings } from './flow-ladder-settings.ts';
import type { LadderStep, WeighedPiece } from './flow-ladder-steps.ts';

const fewestSteps = 4;
/** A wrong nominal diameter of the two in use (1.75 for 2.85 mm) changes the ratio 2.7 times; more is another mistake. */
const largestRatio = 5;
/** Delivery does not come back by a quarter at a higher flow: a reading that says so was misread or misplaced. */
const largestRecovery = 1.25;
/**
 * Between repeats at one flow, where extrusion past the onset is unsteady; a delivery so many times below the highest recovers
 * by as much (common practice, no source).
 */
const largestSpread = 2;

/** Settings that cannot be. */
export function checkSettings(settings: FlowLadderSettings): BenchProblem[] {
  const { acceptedDeficit, feedLengthUncertainty, haltedAt } = settings;
  const problems = (['filamentDiameter', 'density', 'massResolution'] as const)
    .filter((name) => !(settings[name] > 0 && Number.isFinite(settings[name])))
    .map((name) => badSetting(name, settings[name], 'give a number above 0'));
  if (!(acceptedDeficit > 0 && acceptedDeficit <= 0.5)) {
    problems.push(
      badSetting('acceptedDeficit', acceptedDeficit, 'give a share above 0 and up to 50 %, such as 5 %'),
    );
  }
  if (feedLengthUncertainty !== undefined && !(feedLengthUncertainty >= 0 && feedLengthUncertainty < 0.5)) {
    problems.push(
      badSetting(
        'feedLengthUncertainty',
        feedLengthUncertainty,
        'give a relative uncertainty, such as 0.1 %',
      ),
    );
  }
  if (haltedAt !== undefined && !(haltedAt > 0)) {
    problems.push(badSetting('haltedAt', haltedAt, 'give the commanded flow at which the run ended'));
  }
  return problems;
}

function badSetting(name: string, value: number, help: string): BenchProblem {
  return { code: 'badSetting', message: `${name} cannot be ${value}`, found: String(value), help };
}

/** Readings that no bench gives: zeros, negative numbers, a table that is there twice. */
export function checkReadings(observations: Observations): BenchProblem[] {
  return [
    ...notPositiveReadings(
      observations,
      Object.keys(observations.columns),
      'delete the row if nothing was extruded and note the halt as an event of the trial; else write what was read',
    ),
    ...repeatedTable(observations, 'commandedFlow', fewestSteps),
    ...tooManyValues(observations, 'commandedFlow'),
  ];
}

/** Readings that cannot belong to a ladder: too few steps, ratios that a filament does not have. */
export function checkSteps(readings: readonly WeighedPiece[], steps: readonly LadderStep[]): BenchProblem[] {
  if (steps.length < fewestSteps) return [tooFewSteps(steps.length)];
  const ratios = steps.map((step) => Math.exp(step.meanLogRatio));
  const highest = Math.max(...ratios);
  const lowest = ratios[0] ?? Number.NaN;
  if (lowest > largestRatio || lowest < 1 / largestRatio) return [implausibleRatio(lowest)];
  if (highest > largestRatio * lowest) return [implausibleRatio(highest)];
  const off = outOfLine(readings, steps);
  return off.length > 0 ? off : risingMass(steps);
}

function tooFewSteps(count: number): BenchProblem {
  return {
    code: 'tooFewSteps',
    message:
      count === 1
        ? `the ladder has only one commanded flow, but a limit needs ${fewestSteps} different ones`
        : `the ladder has ${count} different commanded flows, but a limit needs ${fewestSteps}`,
    found: String(count),
    help: `${count === 1 ? 'check whether two columns are swapped; else ' : ''}add steps: at least three that deliver in full and two beyond the limit`,
  };
}

function implausibleRatio(ratio: number): BenchProblem {
  const found = formatNumber(ratio, { significantDigits: 3 });
  return {
    code: 'implausibleRatio',
    message: `what came out weighs ${found} times what was fed`,
    found,
    help: 'check whether two columns are swapped, the units in the column headings, and the diameter and density of the filament',
  };
}

/** A rise of the delivered share that is no scatter, as a fraction. */
const smallestRise = 0.012;
/** Standard uncertainties of a rise beyond which chance is no explanation. */
const unlikely = 4;

/** A share that rises over the whole ladder: where nothing falls there is no limit to be found. */
function risingMass(steps: readonly LadderStep[]): BenchProblem[] {
  const logs = steps.map(({ meanLogRatio }) => meanLogRatio);
  const third = Math.max(1, Math.floor(steps.length / 3));
  const [start, end] = [describe(logs.slice(0, third)).mean, describe(logs.slice(-third)).mean];
  // From one step to the next, so that the rise itself counts as little as it may (von Neumann's estimate).
  const leaps = logs.slice(1).map((log, index) => log - (logs[index] ?? 0));
  const variance = leaps.reduce((sum, leap) => sum + leap * leap, 0) / (2 * leaps.length);
  const uncertainty = Math.sqrt((2 * variance) / third);
  const fall = Math.max(...logs) - (logs.at(-1) ?? 0);
  const isChance = end - start < Math.max(smallestRise, unlikely * uncertainty);
  return isChance || fall > Math.max(smallestRise, (end - start) / 2) ? [] : [massRises(start, end)];
}

function massRises(start: number, end: number): BenchProblem {
  const percent = (log: number) =>
    formatQuantity(Math.exp(log), 'ratio', { unit: '%', significantDigits: 3 });
  return {
    code: 'massRises',
    message: `what comes out rises with the flow, from ${percent(start)} of the fed mass at the lowest steps to ${percent(end)} at the highest, so this ladder shows no limit`,
    found: percent(end),
    help: 'let hot end and scale warm up, zero the scale before each piece, mark the fed length anew, and run the ladder again; a last piece at the lowest flow tells whether scale or feed drifted',
  };
}

/** The one reading that is far above all others, or else those that later and equal steps are far above. */
function outOfLine(readings: readonly WeighedPiece[], steps: readonly LadderStep[]): BenchProblem[] {
  const [top, second] = readings.toSorted((one, other) => other.ratio - one.ratio);
  if (top === undefined || second === undefined) return [];
  const isOnlyLowest = top.flow === steps[0]?.flow && steps[0].count === 1;
  if (top.ratio > largestRecovery * second.ratio && !isOnlyLowest) {
    return [readingOutOfLine(top, 'above all others', top.ratio / second.ratio)];
  }
  const low = lowReadings(readings);
  const only = onlyOneOff(readings, low);
  if (only === null) return low.map(({ reading, where, factor }) => readingOutOfLine(reading, where, factor));
  const distance = distanceFromRepeats(only, readings);
  return [
    readingOutOfLine(only, `${distance > 0 ? 'above' : 'below'} its repeats`, Math.exp(Math.abs(distance))),
  ];
}

/** A reading that is far below one at a higher flow, or at its own. */
interface LowReading {
  readonly reading: WeighedPiece;
  readonly where: string;
  readonly factor: number;
}

function lowReadings(readings: readonly WeighedPiece[]): LowReading[] {
  const highest = highestRatio(readings);
  return readings.flatMap((reading) => {
    const later = highestRatio(readings.filter(({ flow }) => flow > reading.flow)) / reading.ratio;
    const beside = highestRatio(readings.filter(({ flow }) => flow === reading.flow)) / reading.ratio;
    if (later > (highest > largestSpread * reading.ratio ? largestSpread : largestRecovery))
      return [{ reading, where: 'below a later step', factor: later }];
    return beside > largestSpread ? [{ reading, where: 'below a repeat', factor: beside }] : [];
  });
}

/** How many of the highest readings are asked whether the ladder is in order without them. */
const mostSuspects = 4;

/** The reading without which nothing is out of line, of several the one farthest from its repeats; null where none has any. */
function onlyOneOff(readings: readonly WeighedPiece[], low: readonly LowReading[]): WeighedPiece | null {
  if (low.length === 0) return null;
  const highest = readings.toSorted((one, other) => other.ratio - one.ratio);
  const distance = (piece: WeighedPiece) => Math.abs(distanceFromRepeats(piece, readings));
  const [farthest] = [
    ...highest.slice(0, mostSuspects),
    ...low.slice(0, mostSuspects).map(({ reading }) => reading),
  ]
    .filter((suspect) => lowReadings(readings.filter((reading) => reading !== suspect)).length === 0)
    .sort((one, other) => distance(other) - distance(one));
  return farthest && distance(farthest) > 0 ? farthest : null;
}

/** Logarithm of how many times the mean of its repeats a reading is; 0 where it has none. */
function distanceFromRepeats(piece: WeighedPiece, readings: readonly WeighedPiece[]): number {
  const repeats = readings.filter(({ flow }) => flow === piece.flow).filter((each) => each !== piece);
  if (repeats.length === 0) return 0;
  return Math.log(piece.ratio / describe(repeats.map(({ ratio }) => ratio)).mean);
}

function highestRatio(readings: readonly WeighedPiece[]): number {
  return Math.max(0, ...readings.map(({ ratio }) => ratio));
}

function readingOutOfLine({ mass, flow, row }: WeighedPiece, where: string, factor: number): BenchProblem {
  const found = formatQuantity(mass, 'mass');
  const times = formatNumber(factor, { significantDigits: 3 });
  return {
    code: 'readingOutOfLine',
    message: `${found} at ${formatQuantity(flow, 'volumeFlow', { significantDigits: 4 })} is off by a factor of ${times}, ${where}`,
    found,
    help: 'check the digits and the decimal point; weigh a new piece if it broke off',
    row,
  };
}
