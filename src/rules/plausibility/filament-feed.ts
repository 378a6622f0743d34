import { flowLimits } from '../../evidence/supported-flow-limits.ts';
import { fastestFeed } from '../../knowledge/filament-diameters.ts';
import { filamentFeed as feedOfFlow, flowOfFeed } from '../../physics/filament-geometry.ts';
import { shown } from '../../units/wording.ts';
import { hotEnd } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'machine' | 'filament'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['machine', 'filament'],
  severity: 'warning',
  statement: 'A stated flow feeds the filament no faster than drives can push, about 60 mm/s.',
  rationale: 'Faster, the drive grinds the filament; such a flow was calculated, not extruded.',
  source:
    'Go & Hart, Additive Manufacturing 18 (2017) 276-284 (from memory): 78 mm3/s, which is 33 mm/s in 1.75 mm; twice that is common practice, no source.',
  formula: 'v = 4Q/(pi d^2), Q flow, d diameter of the filament; v <= 60 mm/s',
  example: {
    kind: 'machine',
    bad: hotEnd({ meltFlow: ['150 mm3/s', 'polymer: PS-HI, nozzleTemperature: 230 Cel'] }),
    good: hotEnd({ meltFlow: ['32 mm3/s', 'polymer: PLA, nozzleTemperature: 230 Cel'] }),
  },
  *check(profile, context) {
    for (const { path, value, hotEnd, filament } of flowLimits(profile, context)) {
      const diameter = filament?.diameter ?? hotEnd.filamentDiameter;
      if (diameter <= 0 || feedOfFlow(value, diameter) <= fastestFeed) continue;
      yield {
        path,
        part: 'value',
        message: `${shown(value, 'volumeFlow')} feeds the ${shown(diameter, 'length')} filament at ${shown(feedOfFlow(value, diameter), 'speed')}, faster than drives can push`,
        found: shown(value, 'volumeFlow'),
        allowed: `up to ${shown(flowOfFeed(fastestFeed, diameter), 'volumeFlow')}, ${fastestFeed} mm/s`,
        help: 'Check the digits and the unit of the flow and the diameter of the filament.',
      };
    }
  },
};
