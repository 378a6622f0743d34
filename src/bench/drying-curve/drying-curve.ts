import { conditionKey } from '../facts/trial-key.ts';
import type { Method } from '../method.ts';
import { dryingCurveFacts } from './drying-curve-facts.ts';
import { reduceDryingCurve } from './reduce-drying-curve.ts';

/** Mass against time in the dryer: the drying time to a residual moisture. */
export const dryingCurve = {
  method: 'dryingCurve',
  columns: { elapsedTime: 'time', mass: 'mass' },
  requiredKeys: [conditionKey('dryingTemperature', '50 Cel')],
  facts: dryingCurveFacts,
  requiredFacts: ['residualMoisture'],
  reduce: reduceDryingCurve,
} as const satisfies Method<typeof dryingCurveFacts>;
