import { formatNumber, formatQuantity } from '../../units/format-quantity.ts';
import type { ReducedResult } from '../reduction.ts';
import type { Gauge, SurveyPlace } from './survey-place.ts';

interface JudgedSurvey {
  readonly places: readonly SurveyPlace[];
  /** mm */
  readonly nominal: number;
  /** mm, or null where the maker states none. */
  readonly tolerance: number | null;
  readonly gauge: Gauge;
  /** Whether enough places were read again to tell the noise of reading. */
  readonly isNoiseKnown: boolean;
  readonly results: readonly ReducedResult[];
}

const enoughPlaces = 10;
/** mm; a spool winds less than that in one turn (common practice, no source). */
const shortestSurvey = 1000;
/** Flow error that a feed calibration should take up. */
const largestFlowError = 0.02;

const millimetres = (value: number) => formatQuantity(value, 'length', { significantDigits: 4 });

/** What a reader should know of a filament before relying on a survey of it, the most serious first. */
export function diameterWarnings({
  places,
  nominal,
  tolerance,
  gauge,
  isNoiseKnown,
  results,
}: JudgedSurvey): string[] {
  const warnings: string[] = [];
  const outside =
    tolerance === null ? [] : places.filter(({ diameter }) => Math.abs(diameter - nominal) > tolerance);
  const [worst] = outside.toSorted(
    (one, other) => Math.abs(other.diameter - nominal) - Math.abs(one.diameter - nominal),
  );
  if (worst !== undefined && tolerance !== null) {
    warnings.push(
      `${outside.length} of ${places.length} places are outside ${millimetres(nominal)} ± ${millimetres(tolerance)}, the worst is ${millimetres(worst.diameter)} at ${formatQuantity(worst.position, 'length', { unit: 'm', significantDigits: 3 })}.`,
    );
  }
  const flow = results.find(({ quantity }) => quantity === 'flowError')?.value ?? 0;
  if (Math.abs(flow) > largestFlowError) {
    warnings.push(
      `The cross section is ${formatNumber(100 * Math.abs(flow), { significantDigits: 2 })} % ${flow > 0 ? 'larger' : 'smaller'} than the nominal diameter gives: calibrate the feed for this batch.`,
    );
  }
  if (2 * gauge.accuracy > largestFlowError * nominal) {
    warnings.push(
      `The gauge may be wrong by ${millimetres(gauge.accuracy)}, which is ${formatNumber((200 * gauge.accuracy) / nominal, { significantDigits: 2 })} % of the flow: use a micrometer to calibrate.`,
    );
  }
  const ovality = results.find(({ quantity }) => quantity === 'ovality');
  if (ovality?.interval.low === 0 && !isNoiseKnown) {
    warnings.push(
      `The axes differ by no more than reading may scatter, up to ${millimetres(ovality.interval.high ?? Number.NaN)}: read five places a second time, in rows of their own, to tell noise from ovality.`,
    );
  }
  if (places.length < enoughPlaces) {
    warnings.push(`Only ${places.length} places were measured: ${enoughPlaces} or more show the spread.`);
  }
  const length = (places.at(-1)?.position ?? 0) - (places[0]?.position ?? 0);
  if (length < shortestSurvey) {
    warnings.push(
      `The survey covers ${millimetres(length)}: the diameter varies over metres, so measure over ${formatQuantity(shortestSurvey, 'length', { unit: 'm' })} or more.`,
    );
  }
  return warnings;
}
