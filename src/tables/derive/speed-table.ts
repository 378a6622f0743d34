import type { Feature } from '../../knowledge/feature.ts';
import type { Basis } from '../../registry/statement.ts';
import type {
  CubicMillimetresPerSecond,
  DegreesCelsius,
  Fraction,
  Millimetres,
  MillimetresPerSecond,
  MillimetresPerSecondSquared,
} from '../../units/canonical.ts';
import type { Calculation } from './calculation.ts';
import type { ConditionRow } from './condition-row.ts';
import type { MeltLimit } from './melt-limit.ts';
import type { RowFlag } from './row-flag.ts';
import type { SourcedValue } from './sourced-value.ts';

/** What can hold a speed where it is. */
export type BoundName = 'melt' | 'motion' | 'cooling' | 'machine' | 'quality';

/**
 * One bound: the speed that it allows before the fraction of the policy, in mm/s, how that follows, and what it rests
 * on. `exact` is the speed.
 */
export interface Bound extends Calculation {
  readonly name: BoundName;
  readonly speed: MillimetresPerSecond;
  /** Basis of the weakest number that it was calculated from. */
  readonly basis: Basis;
}

/** One cell of the tables: a feature at a layer height and line width. */
export interface SpeedRow {
  readonly feature: Feature;
  readonly layerHeight: Millimetres;
  readonly lineWidth: Millimetres;
  readonly speed: MillimetresPerSecond;
  /** Zero on travel moves. */
  readonly flow: CubicMillimetresPerSecond;
  readonly acceleration: MillimetresPerSecondSquared;
  /** The bound that holds the speed where it is. */
  readonly bound: BoundName;
  /** The lowest tested nozzle temperature that feeds the flow. */
  readonly nozzleTemperature: DegreesCelsius;
  /** Length in which the speed is reached from a stop. */
  readonly runUp: Millimetres;
  /** Basis of the weakest number that the speed rests on. */
  readonly basis: Basis;
  readonly flags: readonly RowFlag[];
  /** Every bound that is known, from the one that binds upwards. */
  readonly bounds: readonly Bound[];
  /** Share of the least bound that the policy lets the feature use. */
  readonly fraction: Fraction;
  /** The bound that would bind next, and how much faster it lets the feature go: 0.25 is a quarter. */
  readonly runnerUp: { readonly name: BoundName; readonly slack: Fraction } | null;
  /** Layer height, line width, cross-section of the bead and acceleration, in the order of the arithmetic. */
  readonly sizes: readonly Calculation[];
  /** Speed, flow and run-up, which follow from the bound that binds. */
  readonly results: readonly Calculation[];
}

/** A document that tables were derived from. */
export interface TableInput {
  readonly kind: string;
  readonly id: string;
  /** Version of the profile; null for records, which have none. */
  readonly version: string | null;
  /** SHA-256 of the file with LF line ends. */
  readonly digest: string;
}

/** The table of a pairing, all numbers in canonical units. */
export interface SpeedTable {
  readonly machine: string;
  readonly nozzle: string;
  readonly nozzleDiameter: Millimetres;
  readonly filament: string;
  readonly policy: string;
  readonly rows: readonly SpeedRow[];
  /** What a print needs besides its speeds: temperatures, cooling, drying, spool. */
  readonly conditions: readonly ConditionRow[];
  /** Melt limits that were used, from the coolest nozzle temperature to the hottest. */
  readonly meltLimits: readonly MeltLimit[];
  /** Every number that the rows rest on, sorted by key. */
  readonly sourcedValues: readonly SourcedValue[];
  readonly inputs: readonly TableInput[];
  /** What a reader must know, such as a bead that could not be tabled. */
  readonly warnings: readonly string[];
}
