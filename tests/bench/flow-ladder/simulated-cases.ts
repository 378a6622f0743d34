import { readFileSync } from 'node:fs';
import { flowLadder } from '../../../src/bench/flow-ladder/flow-ladder.ts';
import type { FlowLadderSettings } from '../../../src/bench/flow-ladder/flow-ladder-settings.ts';
import { readBenchSheet } from '../../../src/bench/sheet/bench-sheet.ts';
import type { Observations } from '../../../src/bench/sheet/observations.ts';

/** A simulated bench run of `cases/`, with its truth. */
export interface SimulatedCase {
  readonly id: string;
  readonly observations: Observations;
  readonly settings: FlowLadderSettings;
  /** mm3/s, or null where the limit lies beyond the ladder. */
  readonly limit: number | null;
  /** mm3/s, for a limit beyond the ladder. */
  readonly atLeast: number | null;
}

interface Truth {
  id: string;
  tolerance: number;
  nominalDiameter: number;
  nominalDensity: number;
  scaleResolution: number;
  limit?: number;
  atLeast?: number;
}

const text = (name: string) => readFileSync(new URL(`../cases/${name}`, import.meta.url), 'utf8');

export const simulatedCases: readonly SimulatedCase[] = (JSON.parse(text('truth.json')) as Truth[]).map(
  (truth) => {
    const observations = readBenchSheet(text(`${truth.id}.csv`), flowLadder);
    if (!observations.ok) throw new Error(JSON.stringify(observations.error));
    return {
      id: truth.id,
      observations: observations.value,
      settings: {
        filamentDiameter: truth.nominalDiameter,
        density: truth.nominalDensity / 1000,
        acceptedDeficit: truth.tolerance,
        massResolution: truth.scaleResolution,
      },
      limit: truth.limit ?? null,
      atLeast: truth.atLeast ?? null,
    };
  },
);
