import type { PrintPauses } from '../../bench/reference-print/job-plan.ts';
import type { Feature } from '../../knowledge/feature.ts';
import type { Origin } from '../../knowledge/origin.ts';
import type { Quirk } from '../../knowledge/quirks.ts';
import type { Basis } from '../../registry/statement.ts';
import type { BoundName, TableInput } from '../../tables/derive/speed-table.ts';
import type {
  CubicMillimetresPerSecond,
  Decibels,
  Fraction,
  Grams,
  GramsPerCubicMillimetre,
  Millimetres,
  MillimetresPerSecond,
  MillimetresPerSecondSquared,
  Money,
  Seconds,
} from '../../units/canonical.ts';
import type { Known, ModelCheck } from './job-estimate.ts';
import type { NamedBasis } from './weakest-number.ts';

/**
 * What time and money of any job on a pairing rest on: plain values, so that a page can hold them where there is no registry.
 * All numbers in canonical units.
 */
export interface PairingFigures {
  readonly machine: string;
  readonly nozzle: string;
  readonly filament: string;
  readonly policy: string;
  /** Diameter of the bore of the nozzle. */
  readonly bore: Millimetres;
  /** Commanded speeds are rounded down to its multiples. */
  readonly speedStep: MillimetresPerSecond;
  readonly paths: Readonly<Record<Feature, PathFigures>>;
  readonly pauses: { readonly [Name in keyof PrintPauses]: Known<Seconds> | null };
  readonly topSpeed: Known<MillimetresPerSecond> | null;
  readonly density: Known<GramsPerCubicMillimetre> | null;
  /** Filament on a spool; null where it is not known. */
  readonly spoolMass: Grams | null;
  readonly spoolPrice: Known<Money> | null;
  readonly soundLevel: Known<Decibels> | null;
  readonly price: Known<Money> | null;
  readonly modelCheck: ModelCheck | null;
  /** What the bench has noted of the pairing, the newest first. */
  readonly quirks: readonly Quirk[];
  /** Trials that anything but the bounds of the paths rests on. */
  readonly trials: readonly string[];
  /** What of all this is simulated or invented. */
  readonly origin: Origin;
  /** The documents that all this was taken from. */
  readonly inputs: readonly TableInput[];
}

/** What bounds a kind of path, whatever the beads and segments of a job. */
export interface PathFigures {
  readonly acceleration: MillimetresPerSecondSquared;
  /** The number that the acceleration rests on. */
  readonly accelerationBasis: NamedBasis;
  /** What bounds it at any layer height, the first of those that are equal counting first. */
  readonly bounds: readonly PathBound[];
  /** Contour speeds whose surface passes; the one for a layer height counts. */
  readonly contour: readonly ContourBound[];
}

/** A bound after the fraction and the margin of the policy. */
export interface BoundFacts {
  readonly name: BoundName;
  /** Null for a house rule. */
  readonly basis: Basis | null;
  readonly isSimulated: boolean;
  /** Trials that show it. */
  readonly trials: readonly string[];
}

/** A bound on the speed, or on the flow, which leaves a speed once the bead is known. */
export type PathBound =
  | (BoundFacts & { readonly of: 'speed'; readonly most: MillimetresPerSecond })
  | (BoundFacts & {
      readonly of: 'flow';
      readonly most: CubicMillimetresPerSecond;
      /** Ends of the 95 % coverage interval of the limit, as shares of the limit; null where it has none. */
      readonly interval: { readonly low: Fraction; readonly high: Fraction } | null;
    });

export interface ContourBound extends BoundFacts {
  readonly of: 'speed';
  readonly most: MillimetresPerSecond;
  /** The stated limit itself, before fractions and margins. */
  readonly value: MillimetresPerSecond;
  /** What it was found at; null where that is not stated. */
  readonly layerHeight: Millimetres | null;
  readonly acceleration: MillimetresPerSecondSquared | null;
}
