import { adoptableAt } from '../adopt/adoptable-limit.ts';
import { doubtfulSpecimens } from '../doubt/doubtful-specimens.ts';
import { usualLengthResolution } from '../facts/instrument-facts.ts';
import { machineKey, nozzleKey, nozzleTemperatureKey } from '../facts/trial-key.ts';
import type { Method } from '../method.ts';
import { usualOpenWords } from '../result-words.ts';
import { contourLadderFacts } from './contour-ladder-facts.ts';
import { reduceContourLadder } from './reduce-contour-ladder.ts';

/** Ripple or grade against speed: the contour speed that a surface allows. */
export const contourLadder = {
  method: 'contourLadder',
  columns: { contourSpeed: 'speed', acceleration: 'acceleration', rippleAmplitude: 'length', grade: 'count' },
  optional: ['acceleration'],
  eitherOf: [['rippleAmplitude', 'grade']],
  read: ['rippleAmplitude', 'grade'],
  requiredKeys: [machineKey, nozzleKey, nozzleTemperatureKey],
  facts: contourLadderFacts,
  requiredFacts: [],
  reduce: reduceContourLadder,
  doubtful: (observations, { lengthResolution = usualLengthResolution }) =>
    doubtfulSpecimens(observations, {
      setting: 'contourSpeed',
      measured: 'rippleAmplitude',
      usualScatter: 0.1,
      resolution: lengthResolution,
    }),
  results: { contourSpeed: { name: 'contour speed limit' } },
  openWords: usualOpenWords,
  adoptable: [
    adoptableAt('filament', 'contourSpeed', {
      quantity: 'contourSpeed',
      holdsFor: ['machine', 'nozzle', 'acceleration'],
    }),
    adoptableAt('machine', 'contourSpeed', {
      quantity: 'contourSpeed',
      holdsFor: ['machine', 'nozzle', 'acceleration'],
    }),
  ],
} as const satisfies Method<typeof contourLadderFacts>;
