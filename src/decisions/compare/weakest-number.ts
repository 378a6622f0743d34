import { type Basis, basesByStrength } from '../../registry/statement.ts';

/** A number that a result rests on, under the name by which a reader finds it. */
export interface NamedBasis {
  readonly basis: Basis;
  readonly of: string;
  /** Whether a simulated trial shows it. */
  readonly isSimulated: boolean;
}

/** The number on the weakest basis; the first of them where several share it. */
export function weakestOf(first: NamedBasis, rest: readonly NamedBasis[]): NamedBasis {
  return rest.reduce(
    (weakest, number) =>
      basesByStrength.indexOf(number.basis) > basesByStrength.indexOf(weakest.basis) ? number : weakest,
    first,
  );
}
