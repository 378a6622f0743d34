import { machineKey, nozzleKey, nozzleTemperatureKey, rootKey } from '../facts/trial-key.ts';
import type { Method } from '../method.ts';
import { usualOpenWords } from '../result-words.ts';
import { doubtfulPrints } from './doubtful-prints.ts';
import { reduceReferencePrint, referencePrintFacts } from './reduce-reference-print.ts';

/** Prints of a job: its time and mass. */
export const referencePrint = {
  method: 'referencePrint',
  columns: { printTime: 'time', mass: 'mass' },
  optional: ['mass'],
  read: ['printTime', 'mass'],
  requiredKeys: [machineKey, nozzleKey, nozzleTemperatureKey, rootKey('job', 'mask-rack')],
  facts: referencePrintFacts,
  requiredFacts: [],
  reduce: reduceReferencePrint,
  doubtful: doubtfulPrints,
  results: {
    printTime: { unit: 'min', digits: 4 },
    printMass: { digits: 5 },
  },
  openWords: usualOpenWords,
  adoptable: [],
} as const satisfies Method<typeof referencePrintFacts>;
