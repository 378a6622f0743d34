import { adoptableAt } from '../adopt/adoptable-limit.ts';
import { doubtfulSpecimens } from '../doubt/doubtful-specimens.ts';
import { machineKey, nozzleKey, nozzleTemperatureKey } from '../facts/trial-key.ts';
import type { Method } from '../method.ts';
import { usualOpenWords } from '../result-words.ts';
import { layerTimeFacts, reduceLayerTime } from './reduce-layer-time.ts';

/** Grade against layer time: the shortest layer time that holds shape. */
export const layerTime = {
  method: 'layerTime',
  columns: { layerTime: 'time', grade: 'count' },
  read: ['grade'],
  requiredKeys: [machineKey, nozzleKey, nozzleTemperatureKey],
  facts: layerTimeFacts,
  requiredFacts: [],
  reduce: reduceLayerTime,
  doubtful: (observations) =>
    doubtfulSpecimens(observations, {
      setting: 'layerTime',
      measured: 'grade',
      usualScatter: 0.3,
      resolution: 0,
    }),
  results: { shortestLayerTime: {} },
  openWords: usualOpenWords,
  adoptable: [
    adoptableAt('filament', 'shortestLayerTime', { quantity: 'shortestLayerTime', holdsFor: ['machine'] }),
  ],
} as const satisfies Method<typeof layerTimeFacts>;
