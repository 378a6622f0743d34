import { conditionsOf, type Pairing } from '../../../knowledge/pairing.ts';
import type { Statement } from '../../../registry/generated/documents.ts';
import { besideOf, type Conditions, safestOf, statementsByWeight } from '../../../registry/statement.ts';
import { type Result, success } from '../../../result.ts';
import type { Millimetres, MillimetresPerSecondSquared } from '../../../units/canonical.ts';
import { type UsableLimit, usableLimit, type WeakLimit } from './usable-limit.ts';

/** A contour speed whose surface passes, with the layer height and acceleration that it was found at, if stated. */
export interface ContourLimit extends UsableLimit {
  readonly layerHeight: Millimetres | null;
  readonly acceleration: MillimetresPerSecondSquared | null;
}

/** Contour speeds of a pairing, the most specific first, then the strongest basis: of the filament on this machine, else of the machine. */
export function contourLimits(pairing: Pairing): Result<readonly ContourLimit[], WeakLimit> {
  const ofFilament = fitting(pairing.filament.data.contourSpeed, pairing);
  const profile = ofFilament.length > 0 ? pairing.filament : pairing.machine;
  const statements = ofFilament.length > 0 ? ofFilament : fitting(pairing.machine.data.contourSpeed, pairing);
  const limits: ContourLimit[] = [];
  for (const statement of statements) {
    const usable = usableLimit(pairing.policy, 'contourSpeed', profile, statement);
    if (!usable.ok) return usable;
    const { layerHeight = null, acceleration = null } = statement.at ?? {};
    limits.push({ ...usable.value, layerHeight, acceleration });
  }
  return success(limits);
}

function fitting(
  statements: readonly Statement<number>[] | undefined,
  pairing: Pairing,
): Statement<number>[] {
  const conditions = conditionsOf(pairing);
  const all = statementsByWeight(statements, ({ at }) => withoutMotion(at ?? {}), conditions);
  // Of several that were measured under the same conditions the lowest.
  const telling = all.filter(
    (statement) => safestOf(besideOf(statement, all, conditions), conditions, 'below') === statement,
  );
  return telling.sort((a, b) => Object.keys(b.at ?? {}).length - Object.keys(a.at ?? {}).length);
}

function withoutMotion({ layerHeight: _, acceleration: __, ...rest }: Conditions): Conditions {
  return rest;
}

/** The contour limit that counts for a row. */
interface ChosenContour<Limit> {
  readonly limit: Limit;
  /** Whether it was found at the layer height of the row and at no less than its acceleration. */
  readonly isTested: boolean;
}

/**
 * The contour limit for a layer height and acceleration: the first that was found there, or at a higher acceleration,
 * which shakes more. Where none was, the lowest of all.
 */
export function contourFor<Limit extends Pick<ContourLimit, 'value' | 'layerHeight' | 'acceleration'>>(
  limits: readonly Limit[],
  layerHeight: Millimetres,
  acceleration: MillimetresPerSecondSquared,
): ChosenContour<Limit> | null {
  const tested = limits.find(
    (limit) =>
      (limit.layerHeight === null || Math.abs(limit.layerHeight - layerHeight) < 1e-6) &&
      (limit.acceleration === null || limit.acceleration >= acceleration),
  );
  if (tested !== undefined) return { limit: tested, isTested: true };
  const [first, ...others] = limits;
  if (first === undefined) return null;
  const lowest = others.reduce((least, limit) => (limit.value < least.value ? limit : least), first);
  return { limit: lowest, isTested: false };
}
