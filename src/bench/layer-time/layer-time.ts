import { machineKey, nozzleKey, nozzleTemperatureKey } from '../facts/trial-key.ts';
import type { Method } from '../method.ts';
import { layerTimeFacts, reduceLayerTime } from './reduce-layer-time.ts';

/** Grade against layer time: the shortest layer time that holds shape. */
export const layerTime = {
  method: 'layerTime',
  columns: { layerTime: 'time', grade: 'count' },
  requiredKeys: [machineKey, nozzleKey, nozzleTemperatureKey],
  facts: layerTimeFacts,
  requiredFacts: [],
  reduce: reduceLayerTime,
} as const satisfies Method<typeof layerTimeFacts>;
