import { shown } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** A number with decimals between words of an id: `hs-0.6`. */
const diameterInId = /(?<![\d.])(\d\.\d+)(?![\d.])/;

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['machine'],
  severity: 'error',
  statement: 'A diameter in the id of a nozzle is the diameter of the nozzle.',
  rationale: 'Trials name the nozzle by its id; people read `hs-0.6` as a 0.6 mm nozzle.',
  source: 'Format of the registry: an id that describes describes truly.',
  example: alike(
    'machine',
    { bad: '0.6 mm', good: '0.4 mm' },
    (value) => `
hotEnds:
  - id: main
    filamentDiameter: 1.75 mm
    nozzles:
      - {id: hs-0.4, diameter: ${value}, material: hardenedSteel}
      - {id: hs-0.6, diameter: 0.6 mm, material: hardenedSteel}`,
  ),
  *check(profile) {
    for (const [end, { nozzles }] of profile.data.hotEnds.entries()) {
      for (const [index, { id, diameter }] of nozzles.entries()) {
        const named = diameterInId.exec(id)?.[1];
        if (named === undefined || Math.abs(Number(named) - diameter) < 0.005) continue;
        yield {
          path: ['hotEnds', end, 'nozzles', index, 'diameter'],
          part: 'value',
          message: `The nozzle "${id}" has a diameter of ${shown(diameter, 'length')}, but its id says ${named} mm`,
          found: shown(diameter, 'length'),
          allowed: `${named} mm`,
          help: 'Correct the diameter, or give the nozzle another id and use it in the trials too.',
        };
      }
    }
  },
};
