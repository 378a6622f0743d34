import type { CubicMillimetresPerSecond, Range } from '../../../units/canonical.ts';
import type { RowFlag } from '../row-flag.ts';
import type { SourcedValue } from '../sourced-value.ts';

const conditionNames = [
  'nozzleTemperature',
  'firstLayerNozzleTemperature',
  'bedTemperature',
  'chamberTemperature',
  'fan',
  'shortestLayerTime',
  'dryingTemperature',
  'dryingTime',
  'retractionLength',
  'retractionSpeed',
  'pressureCompensation',
  'spoolLength',
  'spoolDuration',
] as const;

export type ConditionName = (typeof conditionNames)[number];

/** One setting that a print needs besides its speeds, rounded to the safe side. */
export interface ConditionRow {
  readonly name: ConditionName;
  /** Flow that a nozzle temperature feeds, or at which a spool empties; null where the flow does not matter. */
  readonly flow: CubicMillimetresPerSecond | null;
  /** Window in `unit`; both the same for a single value, null where nothing is stated or no setting would be safe. */
  readonly window: Range | null;
  /** Whether a profile states it; what is not stated says so, and is never left out. */
  readonly isStated: boolean;
  /** What is published of the family of the filament, in `unit`: a hint where nothing is stated; else null. */
  readonly ofFamily: FamilyFigure | null;
  /** UCUM code, the one that people of the trade use. */
  readonly unit: 'Cel' | '%' | 's' | 'h' | 'm' | 'mm' | 'mm/s';
  /** What the numbers rest on. */
  readonly sourcedValues: readonly SourcedValue[];
  /** What a reader must know of the numbers that it rests on. */
  readonly flags: readonly RowFlag[];
  /** What to mind; empty where there is nothing. */
  readonly note: string;
}

/** A published figure of a polymer family. */
interface FamilyFigure extends Range {
  /** Symbol of the family, such as PLA. */
  readonly family: string;
}

/** A condition before the numbers that it rests on are judged. */
export type BareCondition = Omit<ConditionRow, 'flags'>;

/** A setting that is stated, without a note. */
export function isSet(
  name: ConditionName,
  unit: ConditionRow['unit'],
  window: Range | null,
  sourcedValues: readonly SourcedValue[],
): BareCondition {
  return { name, flow: null, window, isStated: true, ofFamily: null, unit, sourcedValues, note: '' };
}

/** A setting that no profile states, with what is published of the family of the filament, if anything is. */
export function isNotStated(
  name: ConditionName,
  unit: ConditionRow['unit'],
  ofFamily: ConditionRow['ofFamily'] = null,
  sourcedValues: readonly SourcedValue[] = [],
): BareCondition {
  return { name, flow: null, window: null, isStated: false, ofFamily, unit, sourcedValues, note: '' };
}
