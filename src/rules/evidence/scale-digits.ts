import { methodOf } from '../../bench/methods.ts';
import { trialObservations } from '../../bench/sheet/trial-observations.ts';
import type { Profile } from '../../registry/profile.ts';
import { shown } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** With fewer readings all last digits can be zeros by chance. */
const fewestReadings = 4;
/** More readings than that with finer digits are no slips of single ones; a step ten times too coarse leaves nine in ten (common practice, no source). */
const largestFinerShare = 0.75;
const roundOff = 1e-6;

/** What an instrument of a bench reads: its key in a trial, and the columns that it fills. */
const instruments = [
  { key: 'scale', dimension: 'mass', reads: /[mM]ass$/ },
  { key: 'gauge', dimension: 'length', reads: /Diameter$|^(?:rippleAmplitude|defectSize|positionShift)$/ },
  { key: 'clock', dimension: 'time', reads: /^duration$/ },
  { key: 'thermometer', dimension: 'temperatureDifference', reads: /^referenceTemperature$/ },
  { key: 'hygrometer', dimension: 'ratio', reads: /^referenceHumidity$/ },
  { key: 'soundMeter', dimension: 'soundLevel', reads: /^(?:soundLevel|background)$/ },
] as const;

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'Readings are written to the last digit that the instrument shows, and no further.',
  rationale:
    'A step that is stated ten times too fine makes the interval of the result narrower than it is, one ten times too coarse hides what was seen.',
  source:
    'JCGM 100:2008 (GUM), F.2.2.1: the step of a display sets what a reading can tell. Four last digits are all 0 by chance once in ten thousand.',
  formula: 'every m is a multiple of d, and not every m one of 10 d, d step of the display, m reading',
  example: alike(
    'trial',
    { bad: '0.0001 g', good: '0.001 g' },
    (resolution) => `scale: {resolution: ${resolution}}`,
  ),
  *check(profile) {
    for (const { key, dimension, reads } of instruments) {
      const resolution = profile.data[key]?.resolution;
      if (resolution === undefined || resolution <= 0) continue;
      const readings = readingsOf(profile, reads);
      const finer = readings.filter((reading) => !isMultiple(reading, resolution)).length;
      const isTooFine =
        readings.length >= fewestReadings &&
        readings.every((reading) => isMultiple(reading, 10 * resolution));
      const isTooCoarse =
        finer > largestFinerShare * readings.length &&
        readings.length > 1 &&
        readings.every((reading) => isMultiple(reading, resolution / 10));
      if (!isTooFine && !isTooCoarse) continue;
      const [step, finerStep] = [10 * resolution, resolution].map((each) => shown(each, dimension));
      yield {
        path: [key, 'resolution'],
        part: 'value',
        blames: [{ path: ['observations'] }],
        message: `The ${key} is stated to resolve ${finerStep}, but ${isTooFine ? `no reading shows a digit finer than ${step}` : `${finer} of ${readings.length} readings show finer digits`}`,
        found: shown(resolution, dimension),
        allowed: isTooFine ? `from ${step}` : `below ${finerStep}`,
        help: `Check the step of the ${key}, or write the readings as it showed them, with all digits and without averaging.`,
      };
    }
  },
};

/** What an instrument showed in a trial, but for zeros, which have no last digit; empty where the readings cannot be read. */
function readingsOf(profile: Profile<'trial'>, reads: RegExp): readonly number[] {
  const read = trialObservations(profile, methodOf(profile.data.method));
  if (!read.ok) return [];
  const columns = Object.entries(read.value.columns).filter(([name]) => reads.test(name));
  return columns.flatMap(([, readings]) => readings).filter((reading) => reading !== 0);
}

function isMultiple(value: number, step: number): boolean {
  const steps = value / step;
  return Math.abs(steps - Math.round(steps)) <= roundOff * Math.max(1, steps);
}
