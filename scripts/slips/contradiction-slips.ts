import type { AnyProfile } from '../../src/registry/profile.ts';
import { statementsOf } from '../../src/registry/statement.ts';
import { rangeAt, type Slip, textSlip } from './slip.ts';

/** Values that what stands beside them contradicts, and two values in each other's places. */
export function contradictionSlips(profile: AnyProfile): Slip[] {
  return [...raised(profile), ...exchanged(profile)];
}

/** Measured limits that are safe below, raised above their interval, and with it above what the readings show. */
function raised(profile: AnyProfile): Slip[] {
  return [...statementsOf(profile)].flatMap(({ path, statement }) => {
    const value = rangeAt(profile, [...path, 'value']);
    const interval = rangeAt(profile, [...path, 'interval']);
    const isLimit = ['meltFlow', 'contourSpeed', 'bridgeSpeed'].includes(String(path.at(-2)));
    if (value === null || interval === null || !isLimit || statement.basis !== 'measured') return [];
    const { text } = profile.source;
    const [, low = '', high = '', unit = ''] =
      /^(\S+)\.\.(\S+) (.*)$/.exec(text.slice(interval[0], interval[1])) ?? [];
    const more = (number: string) => String(Number((Number(number) * 1.25).toPrecision(3)));
    const limit = `${more(high)} ${unit}`;
    const between = text.slice(value[1], interval[0]);
    return [
      ...textSlip('raised above its interval', profile, [...path, 'value'], value, limit),
      ...textSlip(
        'raised above its readings',
        profile,
        path,
        [value[0], interval[1]],
        `${limit}${between}${more(low)}..${more(high)} ${unit}`,
      ),
    ];
  });
}

const pairs: readonly (readonly [kind: AnyProfile['kind'], one: string, other: string])[] = [
  ['filament', 'nozzleTemperature', 'bedTemperature'],
  ['filament', 'bedTemperature', 'chamberTemperature'],
  ['filament', 'bedTemperature', 'dryingTemperature'],
  ['filament', 'softening', 'dryingTemperature'],
  ['machine', 'topSpeed', 'contourSpeed'],
];

const axes = [
  ['x', 'z'],
  ['y', 'z'],
  ['x', 'y'],
] as const;

function exchanged(profile: AnyProfile): Slip[] {
  const keys = pairs.filter(([kind]) => kind === profile.kind);
  return [
    ...keys.flatMap(([, one, other]) =>
      exchange('two values exchanged', profile, [one, 0, 'value'], [other, 0, 'value']),
    ),
    ...exchange(
      'two values exchanged',
      profile,
      ['conditions', 'nozzleTemperature'],
      ['conditions', 'bedTemperature'],
    ),
    ...exchange(
      'two values exchanged',
      profile,
      ['conditions', 'chamberTemperature'],
      ['conditions', 'ambientTemperature'],
    ),
    ...axes.flatMap(([one, other]) =>
      exchange('axes exchanged', profile, ['envelope', one], ['envelope', other]),
    ),
  ];
}

function exchange(
  kind: 'two values exchanged' | 'axes exchanged',
  profile: AnyProfile,
  one: readonly (string | number)[],
  other: readonly (string | number)[],
): Slip[] {
  const ranges = [rangeAt(profile, one), rangeAt(profile, other)];
  const [first, second] = ranges.filter((range) => range !== null).sort((a, b) => a[0] - b[0]);
  if (first === undefined || second === undefined) return [];
  const { text } = profile.source;
  const [early, late] = [text.slice(first[0], first[1]), text.slice(second[0], second[1])];
  const after = late + text.slice(first[1], second[0]) + early;
  return textSlip(kind, profile, one, [first[0], second[1]], after).map((slip) => ({
    ...slip,
    also: [`/${other.filter((step) => step !== 0 && step !== 'value').join('/')}`],
  }));
}
