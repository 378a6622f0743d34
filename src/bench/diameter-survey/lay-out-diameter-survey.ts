import { type Result, success } from '../../result.ts';
import { shown } from '../../units/wording.ts';
import type { LayoutRequest } from '../layout/layout-request.ts';
import type { PlanProblem } from '../layout/plan-problem.ts';
import type { RunLayout } from '../layout/run-layout.ts';
import { settingsSections } from '../layout/settings-sections.ts';

/** Places along the filament, and how far apart they are in mm (common practice, no source). */
const places = 20;
const spacing = 250;

/** A survey of the diameter along a filament. */
export function layOutDiameterSurvey({ pairing }: LayoutRequest): Result<RunLayout, PlanProblem> {
  const { diameter, diameterTolerance } = pairing.filament.data;
  const tolerance =
    diameterTolerance === undefined ? '' : `, tolerance ± ${shown(diameterTolerance, 'length')}`;
  return success({
    name: 'Diameter survey',
    idWord: 'diameter',
    conditions: ['ambientTemperature: 22 Cel # what the room has'],
    keys: ['gauge: {resolution: 0.01 mm} # and its accuracy, if it is known'],
    sections: settingsSections({
      settings: [`nominal diameter ${shown(diameter, 'length')}${tolerance}`],
      howTo: [
        `mark the filament every ${spacing} mm over ${((places - 1) * spacing) / 1000} m, from the outer end of the spool`,
        'measure each place twice, the second time at right angles to the first, without squeezing the filament',
        'read five of the places a second time, in rows of their own at the same position: that shows how far reading alone scatters',
        'close the gauge and zero it before the first place, and check the zero after the last',
      ],
      atHand: ['calipers, or better a micrometer; a marker; a steel rule'],
    }),
    given: [{ name: 'position', unit: 'mm' }],
    read: [
      { name: 'firstDiameter', unit: 'mm' },
      { name: 'secondDiameter', unit: 'mm' },
    ],
    rows: Array.from({ length: places }, (_, index) => ({ given: [index * spacing], hints: [] })),
    repeats: 1,
  });
}
