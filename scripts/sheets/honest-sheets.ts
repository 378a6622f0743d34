import { largestScaleShare } from '../../src/bench/facts/instrument-facts.ts';
import { randomSource } from '../../src/statistics/random.ts';
import type { Simulate, SimulatedBench } from '../methods/simulated-bench.ts';
import { simulations } from '../methods/simulations.ts';
import type { SheetCount } from './sheet-arguments.ts';
import { type Sheet, sheetOf } from './sheet-text.ts';

/** One honest sheet, and which kind of bench it comes from. */
export interface HonestSheet {
  readonly kind: string;
  readonly number: number;
  readonly sheet: Sheet;
  /** The sheet of another run at the same bench, each by its number. */
  readonly again: (run: number) => Sheet;
}

/** Benches of one seed have numbers of their own. */
const numbersOfSeed = 1_000_000;

/** Sheets as somebody runs them who does what `plan` says, the same ones for the same seed. */
export function honestSheets({ method, count, seed }: SheetCount): HonestSheet[] {
  const simulators: readonly Simulate[] = simulations[method];
  return simulators.flatMap((simulate) => {
    const sheets: HonestSheet[] = [];
    for (let number = seed * numbersOfSeed; sheets.length < count; number++) {
      const at = (run: number) => simulate(number, randomSource(`run ${run} at bench ${number}`));
      const again = (run: number) => sheetOf(method, asAsked(at(run)));
      const bench = at(0);
      if (!isAsPlanned(bench)) continue;
      sheets.push({ kind: bench.kind, number, sheet: sheetOf(method, asAsked(bench)), again });
    }
    return sheets;
  });
}

/** Fewer flows are found as too few. */
const fewestFlows = 6;

/** A plan has pieces as heavy as the scale needs and flows enough, and prints that differ by a tenth are no honest ones. */
function isAsPlanned({ kind, columns, run }: SimulatedBench): boolean {
  const { massResolution } = run;
  const isLight = (columns.extrudedMass ?? []).some(
    (mass) => Number(massResolution) > largestScaleShare * mass,
  );
  const isShort = columns.commandedFlow !== undefined && new Set(columns.commandedFlow).size < fewestFlows;
  return !isLight && !isShort && kind !== 'ten times the usual';
}

/** Nobody asks for less than a fiftieth of a per cent of water. */
const leastMoisture = 0.0002;

function asAsked(bench: SimulatedBench): SimulatedBench {
  const { residualMoisture } = bench.run;
  if (residualMoisture === undefined) return bench;
  const asked = Math.max(leastMoisture, Number(residualMoisture));
  return { ...bench, run: { ...bench.run, residualMoisture: asked } };
}
