import { resultOf } from '../../bench/methods.ts';
import { modelledPrintTime } from '../../bench/reference-print/modelled-print.ts';
import { shown } from '../../units/wording.ts';
import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

/** Twice what the model's equal segments and right angles miss on simulated prints (common practice, no source). */
const acceptedShare = 0.15;

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'A reference print takes the time calculated from its job and its settings, within 15 %.',
  rationale:
    'If not, the machine does not do what it is set to, or the job, the settings or the stopwatch reading are wrong, and `compare` would promise savings that are not there.',
  source:
    'OpenStax, University Physics vol. 1, section 3.4: motion with constant acceleration; the accepted share is common practice, no source.',
  formula:
    '|t_model/t_print - 1| <= 0.15, t_model from paths, mean segments, corners, speeds and accelerations, changes of layer and shortest layer time',
  example: alike(
    'trial',
    { bad: '22', good: '16' },
    (minutes) => `
id: wren-hook-print
method: referencePrint
job: hook
settings:
  outerContour: {speed: 100 mm/s, acceleration: 5000 mm/s2}
  infill: {speed: 130 mm/s, acceleration: 8200 mm/s2}
  travel: {speed: 430 mm/s, acceleration: 8200 mm/s2}
observations:
  columns: {printTime: min, mass: g}
  rows:
    - [${minutes}.1, 9.6]
    - [${minutes}.2, 9.7]`,
    { copied: true },
  ),
  *check(profile, { registry, reduce }) {
    const modelled = modelledPrintTime(registry, profile.data);
    if (modelled === null) return;
    const reduced = reduce(profile.id);
    const printed = reduced.ok ? resultOf(reduced.value, 'printTime')?.value : undefined;
    if (printed === undefined || Math.abs(modelled / printed - 1) <= acceptedShare) return;
    const share = `${Math.round(100 * (modelled / printed - 1))} %`;
    yield {
      path: ['observations'],
      part: 'key',
      message: `The print took ${shown(printed, 'time')}, and its job with these settings gives ${shown(modelled, 'time')}, ${share} off`,
      found: shown(printed, 'time'),
      allowed: `within ${100 * acceptedShare} % of ${shown(modelled, 'time')}`,
      help: 'Check the readings and their unit, the settings, and the paths of the job; state `layerChangeTime` and `travelPause` of the machine if they are missing; otherwise the machine does not reach the acceleration that it is set to.',
    };
  },
};
