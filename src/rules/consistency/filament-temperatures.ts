import { roomTemperature } from '../../knowledge/melt-heat.ts';
import type { Hit } from '../../registry/hit.ts';
import type { Path } from '../../registry/shape.ts';
import { stated } from '../../registry/stated.ts';
import type { DegreesCelsius } from '../../units/canonical.ts';
import { shown } from '../../units/wording.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** In K below the coldest nozzle. */
const gaps = { bed: 55, softening: 15 };
/** Filaments that melt in warm water need less: a share of the way from the room to the coldest nozzle. */
const bedShare = 0.4;

export const rule: ProfileRule<'filament'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['filament'],
  severity: 'warning',
  statement: 'The bed and softening temperatures of a filament are well below its lowest nozzle temperature.',
  rationale:
    'A line has to solidify on the bed; a temperature in °F shows when it is compared with the others.',
  source: `Common practice, no source: a bed at least ${gaps.bed} K, or ${100 * bedShare} % of the way to room temperature if that is less, a softening at least ${gaps.softening} K below the nozzle window.`,
  formula: `T_bed <= T_nozzle - ${gaps.bed} K; T_softening <= T_nozzle - ${gaps.softening} K, T_nozzle the lower end of the window`,
  example: {
    kind: 'filament',
    bad: `
name: Clover PP-GF40
polymer: PP
designation: PP-GF40
fillers:
  - {symbol: GF, massFraction: 40 %}
density:
  - {value: 1.22 g/cm3, basis: claimed, source: oakhollow-clover-petg-sheet}
nozzleTemperature:
  - {value: 215..245 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}
bedTemperature:
  - {value: 95..165 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}`,
    good: `
bedTemperature:
  - {value: 70..80 Cel, basis: claimed, source: oakhollow-clover-petg-sheet}`,
  },
  *check(profile) {
    const { nozzleTemperature, bedTemperature, softening } = profile.data;
    const coldest = Math.min(...nozzleTemperature.map(({ value }) => value.low));
    const beds = stated(bedTemperature, ['bedTemperature']).map((bed) => ({ ...bed, value: bed.value.high }));
    const gap = Math.min(gaps.bed, bedShare * (coldest - roomTemperature));
    yield* tooNear(beds, coldest - gap, coldest, 'A bed');
    yield* tooNear(stated(softening, ['softening']), coldest - gaps.softening, coldest, 'A softening');
  },
};

function* tooNear(
  temperatures: readonly { readonly path: Path; readonly value: DegreesCelsius }[],
  bound: DegreesCelsius,
  coldest: DegreesCelsius,
  what: string,
): Generator<Hit> {
  for (const { path, value } of temperatures) {
    if (value <= bound) continue;
    yield {
      path,
      part: 'value',
      message: `${what} at ${shown(value, 'temperature')} is too close to the lowest nozzle temperature, ${shown(coldest, 'temperature')}: the line would not solidify`,
      found: shown(value, 'temperature'),
      allowed: `up to ${shown(bound, 'temperature')}`,
      help: 'Check both against the sheet, and whether one of them is in °F.',
    };
  }
}
