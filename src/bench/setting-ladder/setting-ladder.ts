import { type AdoptableResult, adoptableAt } from '../adopt/adoptable-limit.ts';
import { doubtfulSpecimens } from '../doubt/doubtful-specimens.ts';
import { usualLengthResolution } from '../facts/instrument-facts.ts';
import { machineKey, nozzleKey, nozzleTemperatureKey } from '../facts/trial-key.ts';
import type { Method } from '../method.ts';
import { usualOpenWords } from '../result-words.ts';
import { ladderSettingNames } from './ladder-settings.ts';
import { reduceSettingLadder } from './reduce-setting-ladder.ts';
import { settingLadderFacts } from './setting-ladder-facts.ts';

const holdsFor = ['machine', 'nozzle'] as const satisfies AdoptableResult['holdsFor'];

/** One setting raised in steps, with a measured defect or a grade: the setting that holds. */
export const settingLadder = {
  method: 'settingLadder',
  columns: {
    retractionLength: 'length',
    retractionSpeed: 'speed',
    pressureCompensation: 'time',
    stickingSpeed: 'speed',
    bridgeSpeed: 'speed',
    overhangSpeed: 'speed',
    fan: 'ratio',
    defectSize: 'length',
    grade: 'count',
  },
  eitherOf: [ladderSettingNames, ['defectSize', 'grade']],
  read: ['defectSize', 'grade'],
  requiredKeys: [machineKey, nozzleKey, nozzleTemperatureKey],
  facts: settingLadderFacts,
  requiredFacts: [],
  reduce: reduceSettingLadder,
  doubtful: (observations, { lengthResolution = usualLengthResolution }) =>
    doubtfulSpecimens(observations, {
      setting: ladderSettingNames.find((name) => observations.columns[name] !== undefined) ?? '',
      measured: 'defectSize',
      usualScatter: 0.15,
      resolution: lengthResolution,
    }),
  results: {
    retractionLength: {},
    retractionSpeed: {},
    pressureCompensation: {},
    stickingSpeed: { name: 'highest speed of the first layer' },
    bridgeSpeed: { name: 'highest bridge speed' },
    overhangSpeed: { name: 'highest overhang speed' },
    lowestFan: { name: 'lowest fan setting', unit: '%' },
    highestFan: { name: 'highest fan setting', unit: '%' },
  },
  openWords: usualOpenWords,
  adoptable: [
    adoptableAt('filament', 'retractionLength', {
      quantity: 'retractionLength',
      safeSide: 'above',
      holdsFor,
    }),
    adoptableAt('filament', 'retractionSpeed', { quantity: 'retractionSpeed', safeSide: 'inside', holdsFor }),
    adoptableAt('filament', 'pressureCompensation', {
      quantity: 'pressureCompensation',
      safeSide: 'inside',
      holdsFor,
    }),
    adoptableAt('filament', 'stickingSpeed', { quantity: 'stickingSpeed', holdsFor }),
    adoptableAt('filament', 'bridgeSpeed', { quantity: 'bridgeSpeed', holdsFor }),
    adoptableAt('filament', 'overhangSpeed', { quantity: 'overhangSpeed', holdsFor }),
    adoptableAt('filament', 'fan', { quantity: 'lowestFan', end: 'low', holdsFor: ['machine'] }),
    adoptableAt('filament', 'fan', { quantity: 'highestFan', end: 'high', holdsFor: ['machine'] }),
  ],
} as const satisfies Method<typeof settingLadderFacts>;
