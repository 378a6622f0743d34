import type { RandomSource } from '../../src/statistics/random.ts';
import { simulateLadder } from '../simulate-ladder.ts';
import { benchOf } from './simulate-hard-ladder.ts';
import type { SimulatedBench } from './simulated-bench.ts';

/** A flow ladder that goes as it should, by how fine its steps are. */
export function simulateCleanLadder(index: number, noise?: RandomSource): SimulatedBench {
  const ladder = simulateLadder(`clean ladder ${index}`, noise);
  const { relativeStep } = ladder.traits;
  return {
    kind: relativeStep < 0.09 ? 'fine steps' : relativeStep < 0.2 ? 'steps of a tenth or so' : 'coarse steps',
    ...benchOf(ladder),
  };
}
