import { type AdoptableResult, adoptableAt } from '../adopt/adoptable-limit.ts';
import { machineKey } from '../facts/trial-key.ts';
import type { Method } from '../method.ts';
import { usualOpenWords } from '../result-words.ts';
import { doubtfulReferences } from './doubtful-references.ts';
import { reduceSetPointCheck } from './reduce-set-point-check.ts';
import { setPointCheckFacts } from './set-point-check-facts.ts';

const whole = { safeSide: 'inside', holdsFor: [] } as const satisfies Partial<AdoptableResult>;
const ofNozzle = { safeSide: 'inside', holdsFor: ['nozzle'] } as const satisfies Partial<AdoptableResult>;

/** Set temperatures or humidities against a reference: how far off a nozzle, bed, chamber or dryer is. */
export const setPointCheck = {
  method: 'setPointCheck',
  columns: {
    setTemperature: 'temperature',
    elapsedTime: 'time',
    referenceTemperature: 'temperature',
    setHumidity: 'ratio',
    referenceHumidity: 'ratio',
  },
  optional: ['elapsedTime'],
  eitherOf: [
    ['setTemperature', 'setHumidity'],
    ['referenceTemperature', 'referenceHumidity'],
  ],
  read: ['referenceTemperature', 'referenceHumidity'],
  requiredKeys: [machineKey],
  facts: setPointCheckFacts,
  requiredFacts: ['checkedPart'],
  reduce: reduceSetPointCheck,
  doubtful: doubtfulReferences,
  results: {
    nozzleTemperatureOffset: {},
    bedTemperatureOffset: {},
    chamberTemperatureOffset: {},
    dryerTemperatureOffset: {},
    chamberHumidityOffset: { unit: '%' },
    dryerHumidityOffset: { unit: '%' },
    offsetSlope: { name: 'slope of the offset', unit: '%' },
    reachedTemperature: {},
    reachedHumidity: { unit: '%' },
    settlingTime: {},
  },
  openWords: usualOpenWords,
  adoptable: [
    adoptableAt('machine', 'nozzleTemperatureOffset', { quantity: 'nozzleTemperatureOffset', ...ofNozzle }),
    adoptableAt('machine', 'bedTemperatureOffset', { quantity: 'bedTemperatureOffset', ...whole }),
    adoptableAt('machine', 'chamberTemperatureOffset', { quantity: 'chamberTemperatureOffset', ...whole }),
    adoptableAt('machine', 'dryerTemperatureOffset', { quantity: 'dryerTemperatureOffset', ...whole }),
  ],
} as const satisfies Method<typeof setPointCheckFacts>;
