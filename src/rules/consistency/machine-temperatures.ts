import type { Machine } from '../../registry/generated/documents.ts';
import type { Hit } from '../../registry/hit.ts';
import { highestStated, type Stated, stated } from '../../registry/stated.ts';
import type { DegreesCelsius } from '../../units/canonical.ts';
import { shown } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** In K: a bed as hot as that below the hot end is in use on no machine. */
const bedBelowHotEnd = 100;
/** In K: a heated chamber may be as hot as its bed, and a little hotter. */
const chamberAboveBed = 20;

/** In Cel: the commonest filaments fuse in a dryer that runs no cooler. */
const dryerFrom = 80;

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['machine'],
  severity: 'warning',
  statement:
    'The temperature limits of a machine get lower from hot end to bed to chamber, and its dryer can run as cool as the commonest filaments need.',
  rationale:
    'A limit in °F only shows when it is compared with the others; a bed or chamber set by it can burn.',
  source: `Heat flows from hot to cold: a chamber without a heater stays below its bed. ${bedBelowHotEnd} K between bed and hot end, ${chamberAboveBed} K for heated chambers, ${dryerFrom} Cel for dryers: common practice, no source.`,
  formula: `T_bed <= T_hot end - ${bedBelowHotEnd} K; T_chamber <= T_bed, heated T_bed + ${chamberAboveBed} K; highest temperatures of each; lowest T_dryer <= ${dryerFrom} Cel`,
  example: alike(
    'machine',
    { bad: '212 Cel', good: '120 Cel' },
    (value) => `
bed:
  temperatureLimit:
    - {value: ${value}, basis: claimed, source: plumstead-wren-sheet}`,
  ),
  *check(profile) {
    const { hotEnds, bed, chamber } = profile.data;
    yield* hotDryer(profile.data);
    const hotEnd = highestStated(hotEnds.flatMap(({ temperatureLimit }) => temperatureLimit ?? []));
    const beds = stated(bed.temperatureLimit, ['bed', 'temperatureLimit']);
    const chambers = stated(chamber.temperatureLimit, ['chamber', 'temperatureLimit']);
    if (hotEnd !== null)
      yield* above(
        beds,
        hotEnd - bedBelowHotEnd,
        `A bed needs to stay ${bedBelowHotEnd} K below the hot end`,
      );
    const bedLimit = highestStated(bed.temperatureLimit);
    if (bedLimit !== null && chamber.heated)
      yield* above(
        chambers,
        bedLimit + chamberAboveBed,
        'A heated chamber is about as hot as its bed at most',
      );
    else if (bedLimit !== null)
      yield* above(chambers, bedLimit, 'A chamber without a heater stays colder than its bed');
  },
};

function* hotDryer({ dryer }: Machine): Generator<Hit> {
  const key = dryer?.setting === 'fixed' ? 'temperature' : 'range';
  const coolest = key === 'range' ? dryer?.range?.low : dryer?.temperature;
  if (coolest === undefined || coolest <= dryerFrom) return;
  yield {
    path: ['dryer', key],
    part: 'value',
    message: `A dryer that runs at ${shown(coolest, 'temperature')} or hotter fuses the commonest filaments`,
    found: shown(coolest, 'temperature'),
    allowed: `up to ${shown(dryerFrom, 'temperature')}`,
    help: 'Check whether the sheet gives °F. If the dryer is for hot materials only, acknowledge the finding.',
  };
}

function* above(limits: readonly Stated<number>[], bound: DegreesCelsius, why: string): Generator<Hit> {
  for (const { path, value } of limits) {
    if (value <= bound) continue;
    yield {
      path,
      part: 'value',
      message: `${why}, here ${shown(bound, 'temperature')}, but ${shown(value, 'temperature')} is stated`,
      found: shown(value, 'temperature'),
      allowed: `up to ${shown(bound, 'temperature')}`,
      help: 'Check both against the sheet, and whether one of them is in °F. The manual of the machine counts.',
    };
  }
}
