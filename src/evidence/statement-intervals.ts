import type { Statement } from '../registry/generated/documents.ts';
import { shapes } from '../registry/generated/shapes.ts';
import type { AnyProfile } from '../registry/profile.ts';
import { type Path, shapeAt } from '../registry/shape.ts';
import { type PlacedStatement, statementsOf } from '../registry/statement.ts';
import type { Range } from '../units/canonical.ts';
import type { Dimension } from '../units/dimension.ts';

/** A single value that is stated with its 95 % coverage interval. */
interface IntervalStatement {
  readonly path: Path;
  readonly value: number;
  readonly interval: Range;
  readonly dimension: Dimension;
  readonly basis: string;
  readonly evidence: string | undefined;
}

/** The property of a profile that a statement at a path belongs to. */
export function propertyOf(path: Path): string {
  return String(path.findLast((step) => typeof step === 'string') ?? '');
}

/** A statement of a profile with its interval; null for a range, and where it has no interval. */
export function intervalStatement(
  profile: AnyProfile,
  { path, statement }: PlacedStatement<Statement<unknown>>,
): IntervalStatement | null {
  const { value, interval, basis, evidence } = statement;
  const shape = shapeAt(shapes[profile.kind], [...path, 'value']);
  if (typeof value !== 'number' || interval === undefined || shape?.type !== 'quantity') return null;
  return { path, value, interval, dimension: shape.dimension, basis, evidence };
}

/** Every single value of a profile that is stated with an interval. */
export function intervalStatements(profile: AnyProfile): IntervalStatement[] {
  return [...statementsOf(profile)].flatMap((placed) => intervalStatement(profile, placed) ?? []);
}
