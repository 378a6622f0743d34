import { linerLimits } from '../../knowledge/liner-places.ts';
import type { Hit } from '../../registry/hit.ts';
import type { HotEnd } from '../../registry/nozzle.ts';
import type { Path } from '../../registry/shape.ts';
import { highestStated } from '../../registry/stated.ts';
import { shown } from '../../units/wording.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['machine'],
  severity: 'note',
  statement: 'A machine states what the rules of safety judge it by.',
  rationale: 'A rule that lacks its key is silent, and silence looks like safety.',
  source: 'The rules of safety of this registry, and the keys that they read.',
  example: {
    kind: 'machine',
    bad: `
hotEnds:
  - id: main
    filamentDiameter: 1.75 mm
    temperatureLimit:
      - {value: 290 Cel, basis: claimed, source: plumstead-wren-sheet}
    nozzles:
      - {id: hs-0.6, diameter: 0.6 mm, material: hardenedSteel}`,
    good: `
hotEnds:
  - id: main
    filamentDiameter: 1.75 mm
    temperatureLimit:
      - {value: 290 Cel, basis: claimed, source: plumstead-wren-sheet}
    liner: allMetal
    nozzles:
      - {id: hs-0.6, diameter: 0.6 mm, material: hardenedSteel}`,
  },
  *check({ data }) {
    for (const [index, hotEnd] of data.hotEnds.entries()) yield* untoldLiner(hotEnd, ['hotEnds', index]);
    if (data.soundLevel !== undefined) return;
    yield {
      path: ['id'],
      part: 'value',
      message: `No sound level is stated, so that safety/sound-action and safety/sound-statement say nothing about the machine`,
      found: 'no `soundLevel`',
      allowed: 'a sound level, measured or as its sheet claims',
      help: 'Add `soundLevel` from the sheet, or measure it by a trial with `method: soundLevel`. Until then judge by ear, and follow the manual and local codes.',
    };
  },
};

/** A liner that is not told of, where the hot end gets hot enough for it to matter. */
function* untoldLiner(hotEnd: HotEnd, path: Path): Generator<Hit> {
  const limit = highestStated(hotEnd.temperatureLimit);
  if (hotEnd.liner !== undefined || limit === null || limit <= linerLimits.low) return;
  yield {
    path: [...path, 'id'],
    part: 'value',
    message: `Hot end "${hotEnd.id}" is to reach ${shown(limit, 'temperature')}, and nothing says whether a polymer stands in its heated path, so that safety/liner-fumes and safety/liner-near-limit say nothing about it`,
    found: 'no `liner`',
    allowed: '`liner: allMetal` or `liner: polymer`',
    help: 'Look it up in the manual of the machine, and add `liner`. A tube of PTFE gives off toxic fumes above 260 Cel.',
  };
}
