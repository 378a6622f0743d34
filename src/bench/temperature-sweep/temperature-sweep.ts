import { machineKey, nozzleKey } from '../facts/trial-key.ts';
import type { Method } from '../method.ts';
import { reduceTemperatureSweep } from './reduce-temperature-sweep.ts';
import { temperatureSweepFacts } from './temperature-sweep-facts.ts';

/** Bond strength or grade against nozzle temperature: the window of nozzle temperatures. */
export const temperatureSweep = {
  method: 'temperatureSweep',
  columns: { nozzleTemperature: 'temperature', bondStrength: 'pressure', grade: 'count' },
  eitherOf: ['bondStrength', 'grade'],
  requiredKeys: [machineKey, nozzleKey],
  facts: temperatureSweepFacts,
  requiredFacts: [],
  reduce: reduceTemperatureSweep,
} as const satisfies Method<typeof temperatureSweepFacts>;
