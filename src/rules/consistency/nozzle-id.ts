import type { Hit } from '../../registry/hit.ts';
import type { Nozzle } from '../../registry/nozzle.ts';
import type { Path } from '../../registry/shape.ts';
import { shown } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** A number with decimals between words of an id, with its point or without: `hs-0.6`, `hs-06`. */
const diameterInId = /(?<![\d.])(\d\.\d+|0\d{1,2})(?![\d.])/;

/** In mm: ids give a bore of thousandths of an inch in tenths of a millimetre. */
const idRounding = 0.02;
/** The first of several that are only numbered: `nozzle-01`. */
const firstNumber = /(?<![\d.])01(?![\d.])/;

/** Words in ids that stand for the material of the tip. */
const materialWords: ReadonlyMap<string, Nozzle['material']> = new Map([
  ['br', 'brass'],
  ['brass', 'brass'],
  ['plated', 'platedBrass'],
  ['cu', 'copper'],
  ['copper', 'copper'],
  ['ss', 'stainlessSteel'],
  ['stainless', 'stainlessSteel'],
  ['hs', 'hardenedSteel'],
  ['hardened', 'hardenedSteel'],
  ['wc', 'carbide'],
  ['carbide', 'carbide'],
  ['ru', 'ruby'],
  ['ruby', 'ruby'],
]);

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['machine'],
  severity: 'error',
  statement: 'A diameter or a material in the id of a nozzle is that of the nozzle.',
  rationale:
    'Trials name the nozzle by its id; people read `hs-0.6` as a 0.6 mm nozzle of hardened steel, and print fibres with it.',
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
    const ids = profile.data.hotEnds.flatMap(({ nozzles }) => nozzles.map(({ id }) => id));
    const numbered = ids.some((id) => firstNumber.test(id));
    for (const [end, { nozzles }] of profile.data.hotEnds.entries()) {
      for (const [index, nozzle] of nozzles.entries()) {
        const path = ['hotEnds', end, 'nozzles', index];
        if (!numbered) yield* otherDiameter(nozzle, path);
        yield* otherMaterial(nozzle, path);
      }
    }
  },
};

function* otherDiameter({ id, diameter }: Nozzle, path: Path): Generator<Hit> {
  const named = diameterInId.exec(id)?.[1]?.replace(/^0(?=\d)/, '0.');
  if (named === undefined || Math.abs(Number(named) - diameter) < idRounding) return;
  yield {
    path: [...path, 'diameter'],
    part: 'value',
    message: `The nozzle "${id}" has a diameter of ${shown(diameter, 'length')}, but its id says ${named} mm`,
    found: shown(diameter, 'length'),
    allowed: `${named} mm`,
    help: 'Correct the diameter, or give the nozzle another id and use it in the trials too.',
  };
}

function* otherMaterial({ id, material }: Nozzle, path: Path): Generator<Hit> {
  const named = id.split(/[^a-z]+/i).flatMap((word) => materialWords.get(word.toLowerCase()) ?? []);
  const [first] = named;
  if (first === undefined || named.includes(material)) return;
  if (material === 'platedBrass' && named.includes('brass')) return;
  yield {
    path: [...path, 'material'],
    part: 'value',
    message: `The nozzle "${id}" has a tip of ${material}, but its id says ${first}`,
    found: material,
    allowed: first,
    help: 'Correct the material, or give the nozzle another id and use it in the trials too.',
  };
}
