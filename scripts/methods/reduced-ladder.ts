import { reduceFlowLadder } from '../../src/bench/flow-ladder/reduce-flow-ladder.ts';
import type { KnownLadder } from './hard-ladders.ts';

/** What the reduction makes of a simulated ladder. */
export function reducedLadder(ladder: KnownLadder): ReturnType<typeof reduceFlowLadder> {
  const column = (index: 0 | 1 | 2) => ladder.rows.map((row) => row[index]);
  return reduceFlowLadder(
    {
      columns: { commandedFlow: column(0), feedLength: column(1), extrudedMass: column(2) },
      rows: ladder.rows.map((_, index) => index + 1),
    },
    {
      filamentDiameter: ladder.nominalDiameter,
      density: ladder.nominalDensity,
      acceptedDeficit: ladder.tolerance,
      massResolution: ladder.scaleResolution,
    },
  );
}
