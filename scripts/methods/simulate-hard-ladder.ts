import type { RandomSource } from '../../src/statistics/random.ts';
import { hardClasses, hardLadder, type KnownLadder } from './hard-ladders.ts';
import type { SimulatedBench } from './simulated-bench.ts';

/** Classes whose ladders have a limit; of the others no limit may come out, see `coverage.ts`. */
const classes = hardClasses.filter((name) => name !== 'rising' && name !== 'allHeld');

/** A flow ladder that goes another way, by what is hard about it. */
export function simulateHardLadder(index: number, noise?: RandomSource): SimulatedBench {
  const kind = classes[index % classes.length] ?? 'sharpKnee';
  return { kind: wordsOfClass(kind), ...benchOf(hardLadder(kind, `hard ladder ${index}`, noise)) };
}

/** `sharpKnee` as `sharp knee`. */
function wordsOfClass(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

/** What a ladder shows, and its truth. */
export function benchOf(ladder: Omit<KnownLadder, 'limitAgainstNoFlow'>): Omit<SimulatedBench, 'kind'> {
  const column = (place: 0 | 1 | 2) => ladder.rows.map((row) => row[place]);
  return {
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
