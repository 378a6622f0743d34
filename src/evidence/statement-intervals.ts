import { shapes } from '../registry/generated/shapes.ts';
import type { AnyProfile } from '../registry/profile.ts';
import { type Path, shapeAt } from '../registry/shape.ts';
import { statementsOf } from '../registry/statement.ts';
import type { Range } from '../units/canonical.ts';
import type { Dimension } from '../units/dimension.ts';

/** A single value that is stated with its 95 % coverage interval. */
export interface IntervalStatement {
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

export function* intervalStatements(profile: AnyProfile): Generator<IntervalStatement> {
  for (const { path, statement } of statementsOf(profile)) {
    const { value, interval, basis, evidence } = statement;
    const shape = shapeAt(shapes[profile.kind], [...path, 'value']);
    if (typeof value !== 'number' || interval === undefined || shape?.type !== 'quantity') continue;
    yield { path, value, interval, dimension: shape.dimension, basis, evidence };
  }
}
