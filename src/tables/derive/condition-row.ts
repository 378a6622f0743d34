import type { CubicMillimetresPerSecond } from '../../units/canonical.ts';
import type { RowFlag } from './row-flag.ts';
import type { SourcedValue } from './sourced-value.ts';

const conditionNames = [
  'nozzleTemperature',
  'firstLayerNozzleTemperature',
  'bedTemperature',
  'chamberTemperature',
  'fan',
  'shortestLayerTime',
  'dryingTemperature',
  'dryingTime',
  'spoolLength',
  'spoolDuration',
] as const;

export type ConditionName = (typeof conditionNames)[number];

/** One setting that a print needs besides its speeds, rounded to the safe side. */
export interface ConditionRow {
  readonly name: ConditionName;
  /** Flow that a nozzle temperature feeds, or at which a spool empties; null where the flow does not matter. */
  readonly flow: CubicMillimetresPerSecond | null;
  /** Window in `unit`; both the same for a single value, null where there is no setting that would be safe. */
  readonly window: { readonly low: number; readonly high: number } | null;
  /** UCUM code, the one that people of the trade use. */
  readonly unit: 'Cel' | '%' | 's' | 'h' | 'm';
  /** What the numbers rest on. */
  readonly sourcedValues: readonly SourcedValue[];
  /** What a reader must know of the numbers that it rests on. */
  readonly flags: readonly RowFlag[];
  /** What to mind; empty where there is nothing. */
  readonly note: string;
}

/** A condition before the numbers that it rests on are judged. */
export type BareCondition = Omit<ConditionRow, 'flags'>;
