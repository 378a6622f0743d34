import type { Basis } from '../registry/statement.ts';
import type {
  CubicMillimetresPerSecond,
  DegreesCelsius,
  Millimetres,
  MillimetresPerSecond,
  MillimetresPerSecondSquared,
} from '../units/canonical.ts';
import type { Feature } from './feature.ts';

/** What can hold a speed where it is. */
export type BoundName = 'melt' | 'motion' | 'cooling' | 'machine' | 'quality';

/** One bound: the speed that it allows, and what that rests on. */
export interface Bound {
  readonly name: BoundName;
  readonly speed: MillimetresPerSecond;
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

export interface SpeedTable {
  readonly machine: string;
  readonly nozzle: string;
  readonly nozzleDiameter: Millimetres;
  readonly filament: string;
  readonly policy: string;
  readonly rows: readonly SpeedRow[];
  readonly inputs: readonly TableInput[];
  /** What a reader must know, such as a bead that could not be tabled. */
  readonly warnings: readonly string[];
}
