import { fitsHotEnd, isFilamentDiameter } from '../../knowledge/filament-diameters.ts';
import { blamedAtHotEnd } from '../../knowledge/flow-limits.ts';
import { pairingOfTrial } from '../../knowledge/pairing-of-trial.ts';
import { shown } from '../../units/wording.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['trial'],
  severity: 'error',
  statement: 'A trial runs a filament in a hot end made for its diameter.',
  rationale:
    'A thicker filament does not go in, a thinner one buckles, and the flow is calculated from the wrong cross-section.',
  source: 'Continuity: the flow follows the square of the diameter.',
  example: {
    kind: 'filament',
    bad: 'diameter: 2.85 mm',
    good: 'diameter: 1.75 mm',
  },
  *check(profile, { registry }) {
    const { machine, hotEnd, filament } = pairingOfTrial(profile.data, registry);
    if (machine === null || hotEnd === null || filament === null) return;
    if (!isFilamentDiameter(hotEnd.filamentDiameter) || !isFilamentDiameter(filament.diameter)) return;
    if (fitsHotEnd(filament.diameter, hotEnd.filamentDiameter)) return;
    yield {
      path: ['filament'],
      part: 'value',
      blames: [
        { of: { kind: 'filament', id: filament.id }, path: ['diameter'] },
        ...blamedAtHotEnd({ machine, hotEnd }, 'filamentDiameter'),
      ],
      message: `The filament measures ${shown(filament.diameter, 'length')}, but the hot end "${hotEnd.id}" of ${profile.data.machine} takes ${shown(hotEnd.filamentDiameter, 'length')}`,
      found: shown(filament.diameter, 'length'),
      allowed: shown(hotEnd.filamentDiameter, 'length'),
      help: 'Correct the filament, the machine or the nozzle of the trial, or the diameter in one of their profiles.',
    };
  },
};
