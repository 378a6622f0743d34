import type { Dimension } from '../../units/dimension.ts';
import { shown } from '../../units/wording.ts';
import type { ProfileRule } from '../engine/rule.ts';

const dimensionOf = {
  speed: 'speed',
  flow: 'volumeFlow',
  acceleration: 'acceleration',
  runUp: 'length',
} as const satisfies Record<string, Dimension>;

const roundLeadingNumbers = [1, 2, 2.5, 5, 10];
const roundOff = 1e-9;

export const rule: ProfileRule<'policy'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['policy'],
  severity: 'warning',
  statement: 'A policy rounds to 1, 2, 2.5 or 5 times a power of ten in the units of the tables.',
  rationale:
    'Tables give mm/s, mm3/s, mm/s2 and mm: a step in mm/min or cm3/h gives numbers that are hard to type and to compare.',
  source:
    'ISO 80000-1:2009, Annex B, from memory: rounding to multiples of a rounding range; which ranges are common practice, no source.',
  example: {
    kind: 'policy',
    bad: 'rounding: {speed: 1 mm/s, flow: 0.5 cm3/h, acceleration: 50 mm/s2, runUp: 0.1 mm}',
    good: 'rounding: {speed: 1 mm/s, flow: 0.1 mm3/s, acceleration: 50 mm/s2, runUp: 0.1 mm}',
  },
  *check(profile) {
    const { rounding } = profile.data;
    for (const key of ['speed', 'flow', 'acceleration', 'runUp'] as const) {
      const step = rounding?.[key];
      if (step === undefined || step <= 0 || isRound(step)) continue;
      yield {
        path: ['rounding', key],
        part: 'value',
        message: `Rounding to ${shown(step, dimensionOf[key])} gives no round numbers in the tables`,
        found: shown(step, dimensionOf[key]),
        allowed: '1, 2, 2.5 or 5 times a power of ten',
        help: 'Check the unit: tables are written in mm/s, mm3/s, mm/s2 and mm.',
      };
    }
  },
};

function isRound(step: number): boolean {
  const leading = step / 10 ** Math.floor(Math.log10(step));
  return roundLeadingNumbers.some((round) => Math.abs(leading - round) <= roundOff * round);
}
