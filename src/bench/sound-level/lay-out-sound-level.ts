import { conditionsOf } from '../../knowledge/pairing.ts';
import { chooseStatement } from '../../registry/statement.ts';
import { type Result, success } from '../../result.ts';
import { shown } from '../../units/wording.ts';
import type { LayoutRequest } from '../layout/layout-request.ts';
import type { PlanProblem } from '../layout/plan-problem.ts';
import type { RunLayout } from '../layout/run-layout.ts';
import { settingsSections } from '../layout/settings-sections.ts';

/** Four sides and the top at 1 m, as a survey by ISO 3746 asks, and two places further away. */
const places = [
  { distance: 1, at: 'front' },
  { distance: 1, at: 'right' },
  { distance: 1, at: 'behind' },
  { distance: 1, at: 'left' },
  { distance: 1, at: 'above' },
  { distance: 2, at: 'front' },
  { distance: 2, at: 'left' },
] as const;

/** Share of the top speed at which machines are usually heard (common practice, no source). */
const shareOfTop = 0.5;

/** Sound around a machine at work. */
export function layOutSoundLevel({ pairing }: LayoutRequest): Result<RunLayout, PlanProblem> {
  const { machine } = pairing;
  const conditions = conditionsOf(pairing);
  const claimed = chooseStatement(machine.data.soundLevel, conditions);
  const top = chooseStatement(machine.data.topSpeed, conditions);
  const speed = top === null ? null : Math.round((top.value * shareOfTop) / 10) * 10;
  return success({
    name: 'Sound level',
    idWord: 'sound',
    conditions: [
      'ambientTemperature: 22 Cel # what the room has',
      ...(speed === null ? [] : [`printSpeed: ${shown(speed, 'speed')}`]),
    ],
    keys: ["soundMeter: {class: class2, resolution: '0.1 dB[SPL]{A}'}"],
    sections: settingsSections({
      settings: [
        claimed === null
          ? 'no sound level is stated for this machine'
          : `stated level ${shown(claimed.value, 'soundLevel')} (${claimed.basis})`,
        speed === null
          ? 'print at the usual speed, with the fans on, and note it'
          : `print at ${shown(speed, 'speed')}, half of the top speed, with the fans on; if you use another speed, note it`,
      ],
      howTo: [
        'read slow A-weighted levels over half a minute at each place, with the meter held away from the body',
        'read the background at the same place with the machine off; it should be at least 6 dB lower',
        'stay away from walls, and ask for quiet; an ISO 3746 survey is accurate to about 3 dB',
      ],
      atHand: ['a sound level meter and its calibrator; a tape measure; hearing protection if it is loud'],
    }),
    given: [{ name: 'distance', unit: 'm' }],
    read: [
      { name: 'soundLevel', unit: 'dB[SPL]{A}' },
      { name: 'background', unit: 'dB[SPL]{A}' },
    ],
    hints: ['place'],
    rows: places.map(({ distance, at }) => ({ given: [distance], hints: [at] })),
    repeats: 1,
  });
}
