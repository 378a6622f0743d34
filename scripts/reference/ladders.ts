import { fileURLToPath } from 'node:url';
import { trialRun } from '../../src/bench/facts/fact.ts';
import { flowLadder } from '../../src/bench/flow-ladder/flow-ladder.ts';
import {
  type FlowLadderSettings,
  flowLadderSettings,
  usualFeedLengthUncertainty,
} from '../../src/bench/flow-ladder/flow-ladder-settings.ts';
import { ladderSteps, weighedPieces } from '../../src/bench/flow-ladder/flow-ladder-steps.ts';
import type { LadderBench } from '../../src/bench/flow-ladder/ladder-likelihood.ts';
import { orderByFlow } from '../../src/bench/flow-ladder/run-drift.ts';
import type { Observations } from '../../src/bench/sheet/observations.ts';
import { trialObservations } from '../../src/bench/sheet/trial-observations.ts';
import { loadFolders } from '../../src/host/load-registry.ts';
import { simulatedCases } from '../../tests/bench/flow-ladder/simulated-cases.ts';

/** A ladder as its posterior is asked for. */
export interface ReferenceLadder {
  readonly id: string;
  readonly bench: LadderBench;
  readonly tolerance: number;
}

/** The flow ladders of the demo registry, and the simulated ones that the tests keep. */
export function referenceLadders(): ReferenceLadder[] {
  const { registry } = loadFolders(['profiles'], fileURLToPath(new URL('../..', import.meta.url)));
  const demo = [...registry.trial.values()]
    .filter(({ data }) => data.method === flowLadder.method)
    .map((trial) => {
      const observations = trialObservations(trial, flowLadder);
      if (!observations.ok) throw new Error(`${trial.id}: ${JSON.stringify(observations.error)}`);
      const settings = flowLadderSettings(trialRun(registry, trial, flowLadder.facts));
      return ladderOf(trial.id, observations.value, settings);
    });
  return [...demo, ...simulatedCases.map((each) => ladderOf(each.id, each.observations, each.settings))];
}

function ladderOf(id: string, observations: Observations, settings: FlowLadderSettings): ReferenceLadder {
  const { haltedAt = Number.POSITIVE_INFINITY, feedLengthUncertainty, acceptedDeficit } = settings;
  const counted = weighedPieces(observations, settings).filter(({ flow }) => flow < haltedAt);
  const steps = ladderSteps(counted, settings.massResolution);
  return {
    id,
    bench: {
      steps,
      feedLengthUncertainty: feedLengthUncertainty ?? usualFeedLengthUncertainty,
      orderByFlow: orderByFlow(counted),
    },
    tolerance: acceptedDeficit,
  };
}
