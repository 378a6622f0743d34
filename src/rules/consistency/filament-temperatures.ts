import { roomTemperature } from '../../knowledge/melt-heat.ts';
import type { Hit } from '../../registry/hit.ts';
import type { Path } from '../../registry/shape.ts';
import { stated } from '../../registry/stated.ts';
import type { DegreesCelsius, Range } from '../../units/canonical.ts';
import { shown } from '../../units/wording.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** In K below the coldest nozzle. */
const gaps = { bed: 55, softening: 15 };
/** Filaments that melt in warm water need less: a share of the way from the room to the coldest nozzle. */
const bedShare = 0.4;
/** In K: how much hotter a chamber may be than the bed. Ovens for the hottest families are as hot as their beds, and hotter. */
const chamberAboveBed = 10;
const ovenBed = 110;

export const rule: ProfileRule<'filament'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['filament'],
  severity: 'warning',
  statement:
    'The bed and softening temperatures of a filament are well below its lowest nozzle temperature, and its chamber is no hotter than its bed.',
  rationale:
    'A line has to solidify on the bed; a temperature in °F shows when it is compared with the others.',
  source: `Common practice, no source: a bed at least ${gaps.bed} K, or ${100 * bedShare} % of the way to room temperature if that is less, a softening at least ${gaps.softening} K below the nozzle window, a chamber at most ${chamberAboveBed} K above a bed below ${ovenBed} Cel.`,
  formula: `T_bed <= T_nozzle - ${gaps.bed} K; T_softening <= T_nozzle - ${gaps.softening} K, T_nozzle the lower end of the window; T_chamber <= T_bed + ${chamberAboveBed} K`,
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
    const { nozzleTemperature, bedTemperature, chamberTemperature, softening } = profile.data;
    const coldest = Math.min(...nozzleTemperature.map(({ value }) => value.low));
    const beds = stated(bedTemperature, ['bedTemperature']).map((bed) => ({ ...bed, value: bed.value.high }));
    const gap = Math.min(gaps.bed, bedShare * (coldest - roomTemperature));
    yield* tooNear(beds, coldest - gap, coldest, 'A bed');
    yield* tooNear(stated(softening, ['softening']), coldest - gaps.softening, coldest, 'A softening');
    yield* aboveBed(stated(chamberTemperature, ['chamberTemperature']), beds);
  },
};

interface StatedTemperature {
  readonly path: Path;
  readonly value: DegreesCelsius;
}

/** A chamber that is hotter than the bed: the window is that of another filament, or both are exchanged. */
function* aboveBed(
  chambers: readonly { readonly path: Path; readonly value: Range }[],
  beds: readonly StatedTemperature[],
): Generator<Hit> {
  if (beds.length === 0) return;
  const bed = Math.max(...beds.map(({ value }) => value));
  const bound = bed + chamberAboveBed;
  for (const { path, value } of chambers) {
    if (bed >= ovenBed || value.high <= bound) continue;
    yield {
      path,
      part: 'value',
      // What softens there, or cannot be, is said of the same place.
      blames: [{ path }, { path: ['bedTemperature'] }],
      message: `A chamber at ${shown(value.high, 'temperature')} is hotter than the bed gets, ${shown(bed, 'temperature')}`,
      found: shown(value.high, 'temperature'),
      allowed: `up to ${shown(bound, 'temperature')}`,
      help: 'Compare both with the sheet; the window may be that of another filament, or the two may be exchanged.',
    };
  }
}

function* tooNear(
  temperatures: readonly StatedTemperature[],
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
