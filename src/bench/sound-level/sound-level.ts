import { machineKey } from '../facts/trial-key.ts';
import type { Method } from '../method.ts';
import { reduceSoundLevel } from './reduce-sound-level.ts';
import { soundLevelFacts } from './sound-level-facts.ts';

/** Sound at distances, and of the room: the level at 1 m and the sound power of a machine. */
export const soundLevel = {
  method: 'soundLevel',
  columns: { distance: 'length', soundLevel: 'soundLevel', background: 'soundLevel' },
  optional: ['background'],
  requiredKeys: [machineKey],
  facts: soundLevelFacts,
  requiredFacts: [],
  reduce: reduceSoundLevel,
} as const satisfies Method<typeof soundLevelFacts>;
