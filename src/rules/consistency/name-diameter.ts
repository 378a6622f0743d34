import { diametersIn, fitsHotEnd } from '../../knowledge/filament-diameters.ts';
import { shown } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** The same as ids write it, at their end: `-285`, `-1.75`. */
const inId = /[-_](1\.?75|2\.?85)$/;
export const rule: ProfileRule<'filament'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['filament'],
  severity: 'error',
  statement: 'A diameter in the name or the id of a filament is its diameter.',
  rationale:
    'A profile that was copied for the other diameter keeps the old one, and every flow from it is wrong by a factor of 2.7.',
  source: 'Format of the registry: a name that describes describes truly.',
  example: alike(
    'filament',
    { bad: '1.75 mm', good: '2.85 mm' },
    (diameter) => `
id: oakhollow/clover-petg-285
name: Clover PETG 2.85
diameter: ${diameter}`,
    { copied: true },
  ),
  *check({ id, data: { name, diameter } }) {
    const other = diameterIn(name, id);
    if (other === null || fitsHotEnd(other, diameter)) return;
    yield {
      path: ['diameter'],
      part: 'value',
      message: `The diameter is ${shown(diameter, 'length')}, but the name "${name}" (${id}) says ${shown(other, 'length')}`,
      found: shown(diameter, 'length'),
      allowed: shown(other, 'length'),
      help: 'Correct the diameter, or the name and the id.',
    };
  },
};

/** The diameter that the name of a filament mentions, else its id, in mm; null where neither does. */
function diameterIn(name: string, id: string): number | null {
  const [named] = diametersIn(name);
  if (named !== undefined) return named;
  const coded = inId.exec(id)?.[1]?.replace('.', '');
  return coded === undefined ? null : Number(coded) / 100;
}
