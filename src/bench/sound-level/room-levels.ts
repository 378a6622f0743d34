import { meanOfLevels, roomCorrectionAtOtherDistance } from '../../physics/sound.ts';
import { describe } from '../../statistics/describe.ts';
import { normalQuantile } from '../../statistics/normal-quantile.ts';
import { normalFactor } from '../../statistics/scatter.ts';
import { weightedQuantiles } from '../../statistics/weighted-quantiles.ts';
import { type CorrectedReading, oneMetre } from './corrected-reading.ts';

/**
 * dB: where nothing is known of a room, its correction at 1 m is taken to lie anywhere from 0 to the most for which a survey by
 * ISO 3746 holds (from memory).
 */
export const largestRoomCorrection = 7;
const step = 0.1;
/**
 * Standard deviation of readings around a machine, in dB, as far as it is known before any reading, and how many degrees of
 * freedom that counts as (common practice, no source).
 */
const usualScatter = { between: 1.5, freedom: 3 };

/** The level at 1 m that one correction leaves, and how probable the readings make that. */
interface RoomLevel {
  readonly level: number;
  /** Standard deviation of the readings, brought to 1 m, dB. */
  readonly scatter: number;
  readonly weight: number;
}

/**
 * Levels at 1 m without the walls, one for each room correction that is possible. Every reading is corrected for its own
 * distance, at which the walls count for more the farther it is; so readings at several distances say by themselves which corrections
 * bring them together (weights by Student's t of their scatter; Bayes' theorem, JCGM 101:2008, 6.2).
 */
export function roomLevels(readings: readonly CorrectedReading[], known: number | undefined): RoomLevel[] {
  const corrections =
    known === undefined
      ? Array.from({ length: largestRoomCorrection / step }, (_, index) => (index + 0.5) * step)
      : [known];
  return corrections.map((correction) => {
    const levels = readings.map(
      ({ atOneMetre, distance }) =>
        atOneMetre - roomCorrectionAtOtherDistance(correction, oneMetre, distance),
    );
    const { standardDeviation, count } = describe(levels);
    const squares = usualScatter.freedom * usualScatter.between ** 2 + (count - 1) * standardDeviation ** 2;
    return {
      level: meanOfLevels(levels),
      scatter: standardDeviation,
      weight: (squares / usualScatter.between ** 2) ** (-(usualScatter.freedom + count - 1) / 2),
    };
  });
}

const evenNormals = Array.from({ length: 64 }, (_, index) => normalQuantile((index + 0.5) / 64));

/** Median and 95 % interval of a level, dB. */
export interface LevelInterval {
  readonly low: number;
  readonly level: number;
  readonly high: number;
}

/** What the levels leave possible together, each with a standard uncertainty in dB of its own besides. */
export function levelInterval(
  levels: readonly RoomLevel[],
  uncertaintyOf: (scatter: number) => number,
): LevelInterval {
  const [first] = levels;
  if (first !== undefined && levels.length === 1) {
    const half = normalFactor * uncertaintyOf(first.scatter);
    return { low: first.level - half, level: first.level, high: first.level + half };
  }
  const quantile = weightedQuantiles(
    levels.flatMap(({ level, scatter }) => evenNormals.map((each) => level + uncertaintyOf(scatter) * each)),
    levels.flatMap(({ weight }) => evenNormals.map(() => weight)),
  );
  return { low: quantile(0.025), level: quantile(0.5), high: quantile(0.975) };
}
