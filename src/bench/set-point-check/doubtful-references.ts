import { groupedBy } from '../../registry/grouped-by.ts';
import { median } from '../../statistics/middle.ts';
import { doubtfulInSample } from '../doubt/doubtful-in-sample.ts';
import { doubtfulInSeries, type PossibleScatter, type StepOfOthers } from '../doubt/doubtful-in-series.ts';
import { type DoubtfulReading, plainDoubts, type ScaledReading } from '../doubt/doubtful-reading.ts';
import type { Observations } from '../sheet/observations.ts';
import type { SetPointCheckRun } from './set-point-check-facts.ts';
import { instrumentOf, scaleOf } from './set-scale.ts';

/** Scatter of a reading that has settled, °C or share, and what it counts in degrees of freedom (common practice, no source). */
const usual = { temperature: 0.3, humidity: 0.004, freedom: 9 };
/** Deviations that no controller and no display explain. */
const least = { temperature: 1, humidity: 0.01 };
/** How many times the change before it the last reading may change. */
const lastWithin = 3;

/** The readings of the reference that lie off the course of those before and behind them at the same set value. */
export function doubtfulReferences(observations: Observations, run: SetPointCheckRun): DoubtfulReading[] {
  const scale = scaleOf(observations);
  const { resolution } = instrumentOf(scale, run);
  const { [scale.set]: setTo = [], [scale.reference]: shown = [], elapsedTime } = observations.columns;
  const readings = observations.rows.map((row, index) => ({
    set: String(setTo[index]),
    reading: { row, x: elapsedTime?.[index] ?? 0, y: shown[index] ?? Number.NaN },
  }));
  return [...groupedBy(readings, ({ set }) => set).values()].flatMap((group) => {
    const own = group.map(({ reading }): ScaledReading => reading);
    const found =
      elapsedTime === undefined
        ? doubtfulInSample(own, {
            ...{ usualScatter: usual[scale.name], freedom: usual.freedom },
            ...{ resolution, least: least[scale.name] },
          })
        : doubtfulInSeries(own, {
            course: 'any',
            inside: courseOf(own),
            scatterAt: (_, others) => [scatterBeside(others, usual[scale.name])],
            resolutionAt: () => resolution,
            least: least[scale.name],
            endsWithin: { last: lastWithin },
          });
    return plainDoubts(scale.reference, found);
  });
}

/** A chamber goes to its value and stays there: whether more of its readings lie above the one before or below it. */
function courseOf(readings: readonly ScaledReading[]): 'falling' | 'rising' {
  const turns = readings.map(({ y }, index) => Math.sign(y - (readings[index - 1]?.y ?? y)));
  return turns.reduce((sum, turn) => sum + turn, 0) < 0 ? 'falling' : 'rising';
}

/** How a reading scatters, from what is usual and from how far the others waver; two of their bends tell as much as one. */
function scatterBeside(others: readonly StepOfOthers[], usually: number): PossibleScatter {
  const told = Math.max(0, others.length - 2) / 2;
  const freedom = usual.freedom + told;
  const squares = usual.freedom * usually ** 2 + told * wavering(others) ** 2;
  return { probability: 1, deviation: Math.sqrt(squares / freedom), freedom };
}

/** Median of a normal distribution's unsigned values, in standard deviations. */
const medianOfNormal = 0.6745;

/** How far readings waver about the mean of those beside them, as a standard deviation of one of them. */
function wavering(steps: readonly StepOfOthers[]): number {
  const bends = steps.slice(1, -1).map(({ mean }, index) => {
    const [before = mean, after = mean] = [steps[index]?.mean, steps[index + 2]?.mean];
    return Math.abs(mean - (before + after) / 2);
  });
  return (median(bends) ?? 0) / medianOfNormal / Math.sqrt(1.5);
}
