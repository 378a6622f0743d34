import { adoptableAt } from '../adopt/adoptable-limit.ts';
import { doubtfulSpecimens } from '../doubt/doubtful-specimens.ts';
import { machineKey, nozzleKey } from '../facts/trial-key.ts';
import type { Method } from '../method.ts';
import { usualOpenWords } from '../result-words.ts';
import { reduceTemperatureSweep } from './reduce-temperature-sweep.ts';
import { temperatureSweepFacts } from './temperature-sweep-facts.ts';

/** Bond strength or grade against nozzle temperature: the window of nozzle temperatures. */
export const temperatureSweep = {
  method: 'temperatureSweep',
  columns: { nozzleTemperature: 'temperature', bondStrength: 'pressure', grade: 'count' },
  eitherOf: [['bondStrength', 'grade']],
  read: ['bondStrength', 'grade'],
  requiredKeys: [machineKey, nozzleKey],
  facts: temperatureSweepFacts,
  requiredFacts: [],
  reduce: reduceTemperatureSweep,
  doubtful: (observations) =>
    doubtfulSpecimens(observations, {
      setting: 'nozzleTemperature',
      measured: 'bondStrength',
      usualScatter: 0.06,
      resolution: 0,
    }),
  results: { lowestNozzleTemperature: {}, highestNozzleTemperature: {} },
  openWords: usualOpenWords,
  adoptable: [
    adoptableAt('filament', 'nozzleTemperature', {
      quantity: 'lowestNozzleTemperature',
      end: 'low',
      holdsFor: ['machine', 'nozzle'],
    }),
    adoptableAt('filament', 'nozzleTemperature', {
      quantity: 'highestNozzleTemperature',
      end: 'high',
      holdsFor: ['machine', 'nozzle'],
    }),
  ],
} as const satisfies Method<typeof temperatureSweepFacts>;
