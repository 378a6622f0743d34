import { conditionsOf, type Pairing } from '../../../knowledge/pairing.ts';
import { filamentLength, spoolDuration } from '../../../physics/filament-geometry.ts';
import { chooseStatement } from '../../../registry/statement.ts';
import type { CubicMillimetresPerSecond } from '../../../units/canonical.ts';
import { roundDown } from '../../../units/round-to-step.ts';
import { sourcedQuantity, sourcedStatement } from '../sourced-value.ts';
import { type BareCondition, isNotStated, isSet } from './condition-row.ts';

/** Steps that are told apart on a bench: a metre of filament, a hundredth of an hour. */
const steps = { length: 1, duration: 0.01 } as const;

/** Length of a full spool, and how long it lasts at a flow in mm3/s; both rounded down. */
export function spoolRows(pairing: Pairing, flow: CubicMillimetresPerSecond): BareCondition[] {
  const { filament } = pairing;
  const { spoolMass, diameter } = filament.data;
  const density = chooseStatement(filament.data.density, conditionsOf(pairing));
  if (spoolMass === undefined || density === null || !(flow > 0)) {
    return [isNotStated('spoolLength', 'm'), isNotStated('spoolDuration', 'h')];
  }
  const sourcedValues = [
    sourcedQuantity(filament, ['spoolMass'], spoolMass),
    sourcedStatement(filament, density),
    sourcedQuantity(filament, ['diameter'], diameter),
  ];
  const metres = roundDown(filamentLength(spoolMass, density.value, diameter) / 1000, steps.length);
  const hours = roundDown(spoolDuration(spoolMass, density.value, flow) / 3600, steps.duration);
  return [
    isSet('spoolLength', 'm', { low: metres, high: metres }, sourcedValues),
    {
      ...isSet('spoolDuration', 'h', { low: hours, high: hours }, sourcedValues.slice(0, 2)),
      flow,
      note: 'At the largest flow of the table without a pause.',
    },
  ];
}
