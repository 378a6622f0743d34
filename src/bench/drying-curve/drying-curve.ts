import type { Trial } from '../../registry/generated/documents.ts';
import { formatQuantity } from '../../units/format-quantity.ts';
import { adoptableAt } from '../adopt/adoptable-limit.ts';
import { conditionKey } from '../facts/trial-key.ts';
import type { Method } from '../method.ts';
import { usualOpenWords } from '../result-words.ts';
import { doubtfulWeighings } from './doubtful-weighings.ts';
import { dryingCurveFacts } from './drying-curve-facts.ts';
import { reduceDryingCurve } from './reduce-drying-curve.ts';

/** Mass against time in the dryer: the drying time to a residual moisture. */
export const dryingCurve = {
  method: 'dryingCurve',
  columns: { elapsedTime: 'time', mass: 'mass' },
  read: ['mass'],
  requiredKeys: [conditionKey('dryingTemperature', '50 Cel')],
  facts: dryingCurveFacts,
  requiredFacts: ['residualMoisture'],
  reduce: reduceDryingCurve,
  doubtful: doubtfulWeighings,
  results: { dryingTime: { unit: 'h' }, dryMass: { digits: 6 } },
  openWords: usualOpenWords,
  adoptable: [
    adoptableAt('filament', 'dryingTime', { quantity: 'dryingTime', holdsFor: [], note: dryingNote }),
  ],
  cautions: [
    'A dryer that is too hot fuses spools or ignites: stay below the softening temperature, do not leave it alone, and never use an oven for food.',
  ],
} as const satisfies Method<typeof dryingCurveFacts>;

/** A statement of a drying time has no key for the temperature and the moisture that it holds for. */
function dryingNote({ conditions, residualMoisture }: Trial): string | null {
  const { dryingTemperature } = conditions;
  if (dryingTemperature === undefined) return null;
  const residual =
    residualMoisture === undefined
      ? ''
      : `, down to ${formatQuantity(residualMoisture, 'ratio', { unit: '%' })} of water`;
  return `At ${formatQuantity(dryingTemperature, 'temperature')}${residual}.`;
}
