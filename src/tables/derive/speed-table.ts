import type { Feature } from '../../knowledge/feature.ts';
import type { Origin } from '../../knowledge/origin.ts';
import type { Quirk } from '../../knowledge/quirks.ts';
import type { Basis } from '../../registry/statement.ts';
import type {
  CubicMillimetresPerSecond,
  DegreesCelsius,
  Fraction,
  Millimetres,
  MillimetresPerSecond,
  MillimetresPerSecondSquared,
  Range,
} from '../../units/canonical.ts';
import type { Calculation } from './calculation.ts';
import type { ConditionRow } from './conditions/condition-row.ts';
import type { MeltLimit } from './limits/melt-limit.ts';
import type { RowFlag } from './row-flag.ts';
import type { SourcedValue } from './sourced-value.ts';

/** What can hold a speed where it is. */
export type BoundName = 'melt' | 'traction' | 'motion' | 'cooling' | 'machine' | 'quality' | 'policy';

/**
 * One bound: the speed that it allows before the fraction of the policy, in mm/s, how that follows, and what it rests
 * on. `exact` is the speed. A cap of the policy is outright: its share is all of it.
 */
export interface Bound extends Calculation {
  readonly name: BoundName;
  readonly speed: MillimetresPerSecond;
  /** Whether it is a speed of the feature itself, of which no share is taken. */
  readonly isOutright: boolean;
  /** Share of the speed that the feature may use by the policy; all of it where it is outright. */
  readonly share: Fraction;
  /** What the bound leaves to the feature: speed times share. */
  readonly allowed: MillimetresPerSecond;
  /** Basis of the weakest number that it was calculated from; null for a house rule. */
  readonly basis: Basis | null;
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
  /** That of the table, or of its first layer. */
  readonly nozzleTemperature: DegreesCelsius;
  /** Part-cooling fan, a share of its full speed; null where it is not known, and on travel moves. */
  readonly fan: Fraction | null;
  /** Length in which the speed is reached from a stop. */
  readonly runUp: Millimetres;
  /** Basis of the weakest number that the speed rests on; null where a house rule alone holds it. */
  readonly basis: Basis | null;
  readonly flags: readonly RowFlag[];
  /** Positions in the quirks of the table of those that show at this flow and temperature. */
  readonly quirks: readonly number[];
  /** Every bound that is known, from the one that binds upwards. */
  readonly bounds: readonly Bound[];
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

/** The largest flow of a pairing at the nozzle temperature of a table. */
export interface LargestFlow {
  /** The limit itself; between tested temperatures the lower end of the band of the line. */
  readonly limit: CubicMillimetresPerSecond;
  /** 95 % coverage interval, or the band of the line; null where none is known. */
  readonly interval: Range | null;
  /** What the policy leaves of it, rounded down: its share of a weak limit, less its margin. */
  readonly usable: CubicMillimetresPerSecond;
  readonly basis: Basis;
  /** Share of the flow that was missing at the limit; null where it rests on no trial. */
  readonly acceptedDeficit: Fraction | null;
  /** Trials that it rests on, with their dates, YYYY-MM-DD. */
  readonly trials: readonly { readonly id: string; readonly date: string }[];
  /** Whether one of them was simulated. */
  readonly isSimulated: boolean;
  /** What the statement of the limit adds, such as that it is a lower bound; null where nothing. */
  readonly note: string | null;
  /** Whether it was read off a line between tested temperatures. */
  readonly isInterpolated: boolean;
  /** Whose choice the temperature is, in words. */
  readonly chosenBy: string;
}

/** A cap of the policy on a feature. */
export interface HouseCap {
  readonly feature: Feature;
  /** Null where it is not capped. */
  readonly speed: MillimetresPerSecond | null;
  readonly acceleration: MillimetresPerSecondSquared | null;
  readonly reason: string;
}

/** The table of a pairing, all numbers in canonical units. */
export interface SpeedTable {
  readonly machine: string;
  readonly nozzle: string;
  readonly nozzleDiameter: Millimetres;
  readonly filament: string;
  readonly policy: string;
  readonly rows: readonly SpeedRow[];
  /** The one nozzle temperature, and that of the first layer. */
  readonly temperatures: { readonly print: DegreesCelsius; readonly firstLayer: DegreesCelsius };
  /** The largest flow at that temperature, and what it rests on. */
  readonly largestFlow: LargestFlow;
  /** Outright caps of the policy that some row obeys, with their reasons. */
  readonly caps: readonly HouseCap[];
  /** What a print needs besides its speeds: temperatures, cooling, drying, spool. */
  readonly conditions: readonly ConditionRow[];
  /** Melt limits that were used, from the coolest nozzle temperature to the hottest. */
  readonly meltLimits: readonly MeltLimit[];
  /** Every number that the rows rest on, sorted by key. */
  readonly sourcedValues: readonly SourcedValue[];
  readonly inputs: readonly TableInput[];
  /** Field notes of the bench on this pairing, the newest first. */
  readonly quirks: readonly Quirk[];
  /** Trials behind it that were simulated, and profiles that are invented. */
  readonly origin: Origin;
  /** What a reader must know, such as a bead that could not be tabled. */
  readonly warnings: readonly string[];
}
