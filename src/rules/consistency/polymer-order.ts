import { type Envelope, type FamilyRange, nozzleLimit, widest } from '../../knowledge/families.ts';
import { softensAtGlass } from '../../knowledge/softening.ts';
import type { Polymer } from '../../registry/generated/documents.ts';
import type { Hit } from '../../registry/hit.ts';
import { stated } from '../../registry/stated.ts';
import type { Dimension } from '../../units/dimension.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'polymer'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['polymer'],
  severity: 'error',
  statement:
    'The temperatures of a family are in their natural order, from glass transition to decomposition.',
  rationale: 'Filaments are judged by these values; a wrong digit here hides mistakes in them.',
  source:
    'Osswald & Menges, Materials Science of Polymers for Engineers (from memory): the order of the thermal transitions; saturated is at least as wet as in equilibrium by definition.',
  formula:
    'T_g < T_m; T_dry <= T_g (amorphous and hard at room temperature) or T_m; T_nozzle and its limit <= T_decomposition; w_saturated >= w_equilibrium',
  example: alike(
    'polymer',
    { bad: '190..250 Cel', good: '380..400 Cel' },
    (value) => `
glassTransition:
  - {value: 75..85 Cel, basis: published, source: invented-plastics-tables}
decomposition:
  - {value: ${value}, basis: published, source: invented-plastics-tables}`,
  ),
  *check(profile) {
    const { data } = profile;
    const families = [data];
    const glass = widest(families, 'glassTransition');
    yield* atLeast(
      data,
      'melting',
      'temperature',
      glass && { ...glass, name: 'the glass transition', end: 'low' },
    );
    const limit = nozzleLimit(families);
    const limitBound = limit && { low: limit.value, high: limit.value, source: limit.source };
    yield* atLeast(
      data,
      'decomposition',
      'temperature',
      limitBound && { ...limitBound, name: 'the nozzle temperature limit', end: 'high' },
    );
    const equilibrium = widest(families, 'moistureEquilibrium');
    yield* atLeast(
      data,
      'moistureSaturated',
      'ratio',
      equilibrium && { ...equilibrium, name: 'the moisture in equilibrium with room air', end: 'high' },
    );
    yield* driedTooHot(data, softensAtGlass(data) ? glass : widest(families, 'melting'));
  },
};

interface LowerBound extends Envelope {
  readonly name: string;
  /** Which end of the bound must not be above the upper end of the statement. */
  readonly end: 'low' | 'high';
}

function* atLeast(
  polymer: Polymer,
  property: FamilyRange,
  dimension: Dimension,
  bound: LowerBound | null,
): Generator<Hit> {
  if (bound === null) return;
  for (const { path, value } of stated(polymer[property], [property])) {
    if (value.high >= bound[bound.end]) continue;
    const found = shownRange(value, dimension);
    yield {
      path,
      part: 'value',
      message: `${found} is below ${bound.name} (${boundText(bound, dimension)}), which is impossible`,
      found,
      allowed: `${shown(bound[bound.end], dimension)} and more`,
      source: bound.source,
      help: 'Check both against their sources; a digit, a unit or the property is mistaken.',
    };
  }
}

function* driedTooHot(polymer: Polymer, transition: Envelope | null): Generator<Hit> {
  for (const { path, value } of stated(polymer.dryingTemperature, ['dryingTemperature'])) {
    if (transition === null || value.high <= transition.high) continue;
    yield {
      path,
      part: 'value',
      message: `Drying at ${shownRange(value, 'temperature')} fuses the filament on the spool: it softens at ${shownRange(transition, 'temperature')}`,
      found: shownRange(value, 'temperature'),
      allowed: `up to ${shown(transition.high, 'temperature')}`,
      source: transition.source,
      help: 'State what spools are dried at; granules in a stirred dryer can be dried hotter.',
    };
  }
}

function boundText(bound: Envelope, dimension: Dimension): string {
  return bound.low === bound.high ? shown(bound.low, dimension) : shownRange(bound, dimension);
}
