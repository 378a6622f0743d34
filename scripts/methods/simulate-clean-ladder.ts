import { simulateLadder } from '../simulate-ladder.ts';
import type { SimulatedBench } from './simulated-bench.ts';

/** A flow ladder that goes as it should, by how fine its steps are. */
export function simulateCleanLadder(index: number): SimulatedBench {
  const ladder = simulateLadder(`clean ladder ${index}`);
  const column = (place: 0 | 1 | 2) => ladder.rows.map((row) => row[place]);
  const { relativeStep } = ladder.traits;
  return {
    kind: relativeStep < 0.09 ? 'fine steps' : relativeStep < 0.2 ? 'steps of a tenth or so' : 'coarse steps',
    columns: { commandedFlow: column(0), feedLength: column(1), extrudedMass: column(2) },
    run: {
      filamentDiameter: ladder.nominalDiameter,
      density: ladder.nominalDensity,
      acceptedDeficit: ladder.tolerance,
      massResolution: ladder.scaleResolution,
    },
    truths: { meltFlow: ladder.limit },
  };
}
