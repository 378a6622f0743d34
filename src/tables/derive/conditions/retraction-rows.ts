import { conditionsOf, type Pairing } from '../../../knowledge/pairing.ts';
import type { Statement } from '../../../registry/generated/documents.ts';
import { chooseStatement } from '../../../registry/statement.ts';
import { clean } from '../../../units/round-to-step.ts';
import { sourcedQuantity, sourcedStatement } from '../sourced-value.ts';
import { type BareCondition, type ConditionName, isNotStated, isSet } from './condition-row.ts';

/** Retraction and pressure compensation: of the filament on this machine, else the retraction of the house. */
export function retractionRows(pairing: Pairing): BareCondition[] {
  const { data } = pairing.filament;
  return [
    statedRow(pairing, 'retractionLength', 'mm', data.retractionLength) ?? houseRow(pairing, 'length'),
    statedRow(pairing, 'retractionSpeed', 'mm/s', data.retractionSpeed) ?? houseRow(pairing, 'speed'),
    statedRow(pairing, 'pressureCompensation', 's', data.pressureCompensation) ??
      isNotStated('pressureCompensation', 's'),
  ];
}

function statedRow(
  pairing: Pairing,
  name: ConditionName,
  unit: 'mm' | 'mm/s' | 's',
  statements: readonly Statement<number>[] | undefined,
): BareCondition | null {
  const stated = chooseStatement(statements, conditionsOf(pairing));
  if (stated === null) return null;
  const value = clean(stated.value);
  return isSet(name, unit, { low: value, high: value }, [sourcedStatement(pairing.filament, stated)]);
}

function houseRow({ policy }: Pairing, of: 'length' | 'speed'): BareCondition {
  const [name, unit] =
    of === 'length' ? (['retractionLength', 'mm'] as const) : (['retractionSpeed', 'mm/s'] as const);
  const { retraction } = policy.data;
  if (retraction === undefined) return isNotStated(name, unit);
  const value = clean(retraction[of]);
  return {
    ...isSet(name, unit, { low: value, high: value }, [sourcedQuantity(policy, ['retraction', of], value)]),
    note: `House rule: ${retraction.reason}`,
  };
}
