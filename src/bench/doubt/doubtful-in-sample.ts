import { describe } from '../../statistics/describe.ts';
import { oneAfterAnother, type ScaledReading, type Unexpected } from './doubtful-reading.ts';
import { chanceOf, isUnlikely } from './unlikely.ts';

/** What is known of readings of one thing before any of them. */
interface SampleNoise {
  /** Standard deviation, and what that counts beside the readings in degrees of freedom. */
  readonly usualScatter: number;
  readonly freedom: number;
  /** Step of the display. */
  readonly resolution: number;
  /** A smaller deviation is no slip, however little the others scatter. */
  readonly least: number;
}

/** The readings of one and the same thing that lie farther from the others than their scatter explains. */
export function doubtfulInSample(readings: readonly ScaledReading[], noise: SampleNoise): Unexpected[] {
  return oneAfterAnother(readings, (rest) => worstOf(rest, noise));
}

function worstOf(readings: readonly ScaledReading[], noise: SampleNoise): Unexpected | null {
  if (readings.length < 2) return null;
  const ordered = readings.toSorted((one, other) => one.y - other.y);
  // The farthest from all others is one of both ends.
  const judged = [ordered[0], ordered.at(-1)].flatMap((reading) => {
    if (reading === undefined) return [];
    const others = ordered.filter((each) => each !== reading).map(({ y }) => y);
    return [judge(reading, others, noise)];
  });
  const [worst] = judged.toSorted((one, other) => one.chance - other.chance);
  if (worst === undefined || !isUnlikely(worst.chance)) return null;
  const { reading, expected, spread } = worst;
  if (Math.abs(reading.y - expected) < noise.least) return null;
  // Of two readings neither tells which is off.
  const rival = readings.length === 2 ? (readings.find((each) => each !== reading) ?? null) : null;
  return { reading, expected, spread, rival };
}

function judge(
  reading: ScaledReading,
  others: readonly number[],
  { usualScatter, freedom, resolution }: SampleNoise,
): Omit<Unexpected, 'rival'> & { readonly chance: number } {
  const { count, mean, standardDeviation } = describe(others);
  const squares = count > 1 ? (count - 1) * standardDeviation ** 2 : 0;
  const degrees = freedom + count - 1;
  const variance = (freedom * usualScatter ** 2 + squares) / degrees + resolution ** 2 / 12;
  const spread = Math.sqrt(variance * (1 + 1 / count));
  const chance = chanceOf((reading.y - mean) / spread, degrees, count + 1);
  return { reading, expected: mean, spread, chance };
}
