import type { AnyProfile } from '../../registry/profile.ts';
import type { Dimension } from '../../units/dimension.ts';
import { shown } from '../../units/wording.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** A step that people type or read from a display: its place, and the units in which it may be round. */
interface Step {
  readonly path: readonly [string, string];
  readonly value: number;
  readonly dimension: Dimension;
  /** Of each the size in the canonical unit. */
  readonly units: readonly number[];
}

const roundings = {
  speed: 'speed',
  flow: 'volumeFlow',
  acceleration: 'acceleration',
  runUp: 'length',
} as const satisfies Record<string, Dimension>;

/** Grams and ounces, millimetres and inches. Clocks may step by the frames of a film, thermometers by half a degree Fahrenheit. */
const displays = {
  scale: { dimension: 'mass', units: [1, 28.349523125] },
  gauge: { dimension: 'length', units: [1, 25.4] },
} as const;

const roundLeadingNumbers = [1, 2, 2.5, 5, 10];
const roundOff = 1e-6;

export const rule: ProfileRule<'policy' | 'trial'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['policy', 'trial'],
  severity: 'warning',
  statement:
    'A policy rounds to, and a scale or a gauge steps by, 1, 2, 2.5 or 5 times a power of ten in the units that people read.',
  rationale:
    'Tables give mm/s, mm3/s, mm/s2 and mm: a step in mm/min or cm3/h gives numbers that are hard to type and to compare; no display steps by 0.011 g.',
  source:
    'ISO 80000-1:2009, Annex B, from memory: rounding to multiples of a rounding range; which ranges are common practice, no source.',
  example: {
    kind: 'policy',
    bad: 'rounding: {speed: 1 mm/s, flow: 0.5 cm3/h, acceleration: 50 mm/s2, runUp: 0.1 mm}',
    good: 'rounding: {speed: 1 mm/s, flow: 0.1 mm3/s, acceleration: 50 mm/s2, runUp: 0.1 mm}',
  },
  *check(profile) {
    const isPolicy = profile.kind === 'policy';
    for (const { path, value, dimension, units } of stepsOf(profile)) {
      if (value <= 0 || units.some((unit) => isRound(value / unit))) continue;
      const step = shown(value, dimension);
      yield {
        path,
        part: 'value',
        message: isPolicy
          ? `Rounding to ${step} gives no round numbers in the tables`
          : `The ${path[0]} is stated to step by ${step}, as no display does`,
        found: step,
        allowed: '1, 2, 2.5 or 5 times a power of ten',
        help: isPolicy
          ? 'Check the unit: tables are written in mm/s, mm3/s, mm/s2 and mm.'
          : `Check the digits and the unit against what the ${path[0]} shows.`,
      };
    }
  },
};

function stepsOf(profile: AnyProfile): readonly Step[] {
  if (profile.kind === 'policy') {
    const { rounding } = profile.data;
    return (['speed', 'flow', 'acceleration', 'runUp'] as const).flatMap((key) =>
      stepAt(['rounding', key], rounding?.[key], { dimension: roundings[key], units: [1] }),
    );
  }
  if (profile.kind !== 'trial') return [];
  const { data } = profile;
  return (['scale', 'gauge'] as const).flatMap((key) =>
    stepAt([key, 'resolution'], data[key]?.resolution, displays[key]),
  );
}

function stepAt(
  path: Step['path'],
  value: number | undefined,
  { dimension, units }: Pick<Step, 'dimension' | 'units'>,
): Step[] {
  return value === undefined ? [] : [{ path, value, dimension, units }];
}

function isRound(step: number): boolean {
  const leading = step / 10 ** Math.floor(Math.log10(step));
  return roundLeadingNumbers.some((round) => Math.abs(leading - round) <= roundOff * round);
}
