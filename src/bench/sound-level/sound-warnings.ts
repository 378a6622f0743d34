import { formatNumber } from '../../units/format-quantity.ts';
import { backgroundRange, type CorrectedReading } from './corrected-reading.ts';
import type { MeterClass } from './sound-level-facts.ts';

/** dB; a source that is small against the distances gives less (common practice, no source). */
const largestScatter = 4;
/** mm; nearer, the machine is no small source any more (common practice, no source). */
const nearField = 500;
const enoughPlaces = 5;

/** What a reader should know of a survey of sound before relying on it, the most serious first. */
export function soundWarnings(
  readings: readonly CorrectedReading[],
  { scatter, meterClass }: { readonly scatter: number; readonly meterClass: MeterClass | undefined },
): string[] {
  const left = readings.filter(({ difference }) => difference < backgroundRange.cannot).length;
  const corrected = readings.filter(
    ({ difference }) => difference >= backgroundRange.cannot && difference <= backgroundRange.need,
  ).length;
  const near = readings.filter(({ distance }) => distance < nearField).length;
  const dB = (value: number) => `${formatNumber(value, { significantDigits: 2 })} dB`;
  return [
    ...(left > 0
      ? [
          `${left} of ${readings.length} readings are less than ${backgroundRange.cannot} dB above the background and are left out.`,
        ]
      : []),
    ...(corrected > 0
      ? [
          `${corrected} of ${readings.length} readings are less than ${backgroundRange.need} dB above the background: the background was subtracted; measure in a quieter room if you can.`,
        ]
      : []),
    ...(scatter > largestScatter
      ? [
          `Converted to 1 m, the readings scatter by ${dB(scatter)}: walls reflect sound, or the machine is louder on one side.`,
        ]
      : []),
    ...(near > 0
      ? [
          `${near} of ${readings.length} readings are closer than 0.5 m, where the machine is not a small source.`,
        ]
      : []),
    ...(readings.length < enoughPlaces
      ? [`Only ${readings.length} places were measured: use four around the machine and one above it.`]
      : []),
    ...(meterClass === undefined || meterClass === 'unclassed'
      ? ['The meter has no class, so the part of the interval for its own error is a guess.']
      : []),
  ];
}
