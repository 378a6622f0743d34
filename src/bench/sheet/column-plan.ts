import type { Dimension } from '../../units/dimension.ts';

/** The columns that observations of a method have. */
export interface ColumnPlan {
  /** Every column that the method knows, with its dimension. */
  readonly columns: Readonly<Record<string, Dimension>>;
  /** Those of them that may be left out. */
  readonly optional?: readonly string[];
  /** Those of them of which exactly one must be there. */
  readonly eitherOf?: readonly string[];
}
