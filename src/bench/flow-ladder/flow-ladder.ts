import { machineKey, nozzleKey, nozzleTemperatureKey } from '../facts/trial-key.ts';
import type { Method } from '../method.ts';
import { flowLadderFacts } from './flow-ladder-facts.ts';
import { flowLadderSettings } from './flow-ladder-settings.ts';
import { reduceFlowLadder } from './reduce-flow-ladder.ts';

/** Commanded flow against extruded mass: the flow that a hot end can melt. */
export const flowLadder = {
  method: 'flowLadder',
  columns: { commandedFlow: 'volumeFlow', feedLength: 'length', extrudedMass: 'mass' },
  requiredKeys: [machineKey, nozzleKey, nozzleTemperatureKey],
  facts: flowLadderFacts,
  requiredFacts: ['filamentDiameter', 'density'],
  reduce: (observations, run) => reduceFlowLadder(observations, flowLadderSettings(run)),
} as const satisfies Method<typeof flowLadderFacts>;
