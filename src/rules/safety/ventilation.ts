import { vapoursOf } from '../../knowledge/harmful-vapours.ts';
import { familiesOnMachine } from '../../knowledge/materials-on-machine.ts';
import { alike, hotEnd } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['machine'],
  severity: 'note',
  statement:
    'Materials that give off harmful vapours are printed on an enclosed machine, or in a ventilated place.',
  rationale: 'On an open machine everything that the melt gives off goes into the room.',
  source:
    'Azimi et al., Environ. Sci. Technol. 50 (2016) 1260-1268: styrene about 10 ug/min to 110 ug/min, caprolactam about 2 ug/min to 180 ug/min.',
  example: alike(
    'machine',
    { bad: 'PS-HI, nozzleTemperature: 240 Cel', good: 'PLA, nozzleTemperature: 230 Cel' },
    (polymer) => `${hotEnd({ meltFlow: ['30 mm3/s', `polymer: ${polymer}`] })}
chamber: {enclosed: false, heated: false, sensed: false}`,
  ),
  *check(profile, { registry }) {
    if (profile.data.chamber.enclosed) return;
    const families = familiesOnMachine(profile.data, registry).filter(
      (family) => vapoursOf(family).length > 0,
    );
    if (families.length === 0) return;
    const named = families.map((family) => `${family.id} (${vapoursOf(family).join(', ')})`).join(', ');
    yield {
      path: ['chamber', 'enclosed'],
      part: 'value',
      message: `The machine is open and runs materials that give off harmful vapours: ${named}`,
      found: 'false',
      allowed: 'true, or only materials that give off nothing harmful',
      help: 'Extract the air or ventilate the room; follow the safety data sheets and local codes, and ask qualified people if in doubt.',
    };
  },
};
