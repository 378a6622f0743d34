import { ladderReadings } from './ladder-readings.ts';
import type { ProfileRule } from './rule.ts';

/** So many single readings show by their scatter around the curve what repeats would show. */
const enoughSingles = 8;

export const noRepeats: ProfileRule = {
  judges: 'profile',
  code: 'evidence/no-repeats',
  severity: 'note',
  statement: 'A ladder of fewer than eight flows repeats readings.',
  rationale: 'How repeatable a bench is can only be seen in readings that should be equal.',
  source: 'JCGM 100:2008 (GUM), 4.2: type A evaluation rests on repeated observations.',
  example: {
    kind: 'trial',
    bad: `
observations:
  columns: {commandedFlow: mm3/s, feedLength: mm, extrudedMass: g}
  rows:
    - [8, 400, 1.223]
    - [12, 400, 1.225]
    - [14, 400, 1.225]
    - [16, 400, 1.220]
    - [18, 400, 1.205]
    - [20, 400, 1.158]
    - [24, 400, 1.042]`,
    good: `
observations:
  columns: {commandedFlow: mm3/s, feedLength: mm, extrudedMass: g}
  rows:
    - [8, 400, 1.223]
    - [8, 400, 1.227]
    - [12, 400, 1.225]
    - [14, 400, 1.225]
    - [16, 400, 1.220]
    - [18, 400, 1.205]
    - [20, 400, 1.158]
    - [24, 400, 1.042]`,
  },
  *check(profile) {
    if (profile.kind !== 'trial') return;
    const readings = ladderReadings(profile);
    const steps = new Set(readings.map(({ flow }) => flow)).size;
    if (readings.length === 0 || readings.length > steps || steps >= enoughSingles) return;
    yield {
      path: ['observations'],
      part: 'key',
      message: `None of the ${steps} flows was repeated`,
      found: `${readings.length} readings at ${steps} flows`,
      help: 'Weigh two or three pieces a flow next time; the interval then rests on this bench.',
    };
  },
};
