import { powerLevel } from '../../physics/sound.ts';
import { formatNumber } from '../../units/format-quantity.ts';
import { adoptableAt } from '../adopt/adoptable-limit.ts';
import { machineKey } from '../facts/trial-key.ts';
import type { Method } from '../method.ts';
import { usualOpenWords } from '../result-words.ts';
import { doubtfulLevels } from './doubtful-levels.ts';
import { reduceSoundLevel } from './reduce-sound-level.ts';
import { soundLevelFacts } from './sound-level-facts.ts';

/** Sound at distances, and of the room: the level at 1 m and the sound power of a machine. */
export const soundLevel = {
  method: 'soundLevel',
  columns: { distance: 'length', soundLevel: 'soundLevel', background: 'soundLevel' },
  optional: ['background'],
  read: ['soundLevel', 'background'],
  requiredKeys: [machineKey],
  facts: soundLevelFacts,
  requiredFacts: [],
  reduce: reduceSoundLevel,
  doubtful: doubtfulLevels,
  results: { soundLevel: {}, soundPower: { inOtherWords: levelText } },
  openWords: usualOpenWords,
  adoptable: [adoptableAt('machine', 'soundLevel', { quantity: 'soundLevel', holdsFor: [] })],
} as const satisfies Method<typeof soundLevelFacts>;

/** A sound power is read as a level, which UCUM has no unit for. */
function levelText(power: number): string {
  return `level ${formatNumber(powerLevel(power), { significantDigits: 3 })} dB(A) re 1 pW`;
}
