import { adoptableAt } from '../adopt/adoptable-limit.ts';
import { machineKey, nozzleKey, nozzleTemperatureKey } from '../facts/trial-key.ts';
import type { Method } from '../method.ts';
import { doubtfulPieces } from './doubtful-pieces.ts';
import { flowLadderFacts } from './flow-ladder-facts.ts';
import { flowLadderSettings } from './flow-ladder-settings.ts';
import { reduceFlowLadder } from './reduce-flow-ladder.ts';

/** Commanded flow against extruded mass: the flow that a hot end can melt. */
export const flowLadder = {
  method: 'flowLadder',
  columns: { commandedFlow: 'volumeFlow', feedLength: 'length', extrudedMass: 'mass' },
  read: ['extrudedMass'],
  requiredKeys: [machineKey, nozzleKey, nozzleTemperatureKey],
  facts: flowLadderFacts,
  requiredFacts: ['filamentDiameter', 'density'],
  reduce: (observations, run) => reduceFlowLadder(observations, flowLadderSettings(run)),
  doubtful: doubtfulPieces,
  results: {
    meltFlow: { name: 'melt flow limit' },
    startDeficit: { name: 'missing at the lowest steps, of the nominal mass', unit: '%' },
  },
  openWords: {
    above: 'the ladder ended before the accepted deficit',
    below: 'the first step exceeds the accepted deficit',
    bound: 'the ladder ended before the deficit was reached',
    noInterval: 'the ladder does not reach the deficit',
    noSupport: 'the deficit is exceeded at the first step',
    help: 'Run a ladder that starts lower',
  },
  adoptable: [
    adoptableAt('filament', 'meltFlow', {
      quantity: 'meltFlow',
      holdsFor: ['machine', 'nozzle', 'nozzleTemperature', 'batch'],
    }),
    adoptableAt('machine', 'hotEnds[].meltFlow', {
      quantity: 'meltFlow',
      holdsFor: ['nozzle', 'filament', 'nozzleTemperature'],
    }),
  ],
  eventMarks: (events) =>
    events.map(({ event, commandedFlow }) => ({
      at: commandedFlow,
      words: event === 'stripped' ? 'drive stripped the filament' : event,
      style: event === 'halted' ? 'dashDotted' : 'dotted',
    })),
} as const satisfies Method<typeof flowLadderFacts>;
