import { formatNumber } from '../../units/format-quantity.ts';
import { backgroundRange, type CorrectedReading } from './corrected-reading.ts';
import { largestRoomCorrection } from './room-levels.ts';
import type { SoundLevelRun } from './sound-level-facts.ts';

/** dB; a source that is small against the distances gives less (common practice, no source). */
const largestScatter = 4;
/** mm; nearer, the machine is no small source any more (common practice, no source). */
const nearField = 500;
const enoughPlaces = 5;

/** What a reader should know of a survey of sound before relying on it, the most serious first. */
export function soundWarnings(
  readings: readonly CorrectedReading[],
  { scatter, meterClass, roomCorrection }: SoundLevelRun & { readonly scatter: number },
): string[] {
  const left = readings.filter(({ difference }) => difference < backgroundRange.cannot).length;
  const corrected = readings.filter(
    ({ difference }) => difference >= backgroundRange.cannot && difference <= backgroundRange.need,
  ).length;
  const near = readings.filter(({ distance }) => distance < nearField).length;
  const dB = (value: number) => `${formatNumber(value, { significantDigits: 2 })} dB`;
  return [
    ...roomWarning(roomCorrection),
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
          `Converted to 1 m, the readings scatter by ${dB(scatter)}, whatever the room: the machine is louder on one side, or something stood in the way.`,
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

function roomWarning(correction: number | undefined): string[] {
  if (correction === undefined) {
    return [
      `No room correction is stated: the walls are taken to raise the level at 1 m by anything from 0 to ${largestRoomCorrection} dB, which opens the interval downwards. State K₂ of ISO 3746 to close it, or read outdoors.`,
    ];
  }
  if (correction <= largestRoomCorrection) return [];
  return [
    `The walls raise the level by ${formatNumber(correction, { significantDigits: 2 })} dB, and ISO 3746 holds up to ${largestRoomCorrection} dB: read in a larger or a softer room.`,
  ];
}
