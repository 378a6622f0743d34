import type { Dimension } from '../../units/dimension.ts';

/** The columns that observations of a method have. */
export interface ColumnPlan {
  /** Every column that the method knows, with its dimension. */
  readonly columns: Readonly<Record<string, Dimension>>;
  /** Those of them that may be left out. */
  readonly optional?: readonly string[];
  /** Groups of them; of each exactly one must be there. */
  readonly eitherOf?: readonly (readonly string[])[];
}
