import { labelAt } from '../../registry/facts-of-key.ts';
import type { Statement } from '../../registry/generated/documents.ts';
import { shapes } from '../../registry/generated/shapes.ts';
import type { AnyProfile } from '../../registry/profile.ts';
import { type Path, shapeAt, toPointer } from '../../registry/shape.ts';
import { type Basis, statementsOf } from '../../registry/statement.ts';
import { lineOfValue } from '../../registry/yaml/value-lines.ts';
import type { Range } from '../../units/canonical.ts';
import type { Dimension } from '../../units/dimension.ts';

/** A number that a table uses, and what it rests on. */
export interface SourcedValue {
  /** Unique in a table: kind, id and JSON pointer (RFC 6901) of the number. */
  readonly key: string;
  /** What the number is, such as `melt flow limit`. */
  readonly what: string;
  /** In the canonical unit of the dimension. */
  readonly value: number | Range;
  readonly dimension: Dimension;
  /** Null for a house rule, and for a fact about how a machine is built. */
  readonly basis: Basis | null;
  readonly kind: AnyProfile['kind'];
  readonly id: string;
  readonly pointer: string;
  /** File as the user would type it, and the line in it, from 1. */
  readonly place: { readonly file: string; readonly line: number };
  /** Id of the source that states it, if there is one. */
  readonly source: string | null;
  /** Where in the source it stands. */
  readonly locator: string | null;
  readonly reason: string | null;
  /** Trial whose readings show it. */
  readonly evidence: string | null;
  readonly interval: Range | null;
}

/** A statement that a profile makes; `what` is its label in the schema unless given. */
export function sourcedStatement(
  profile: AnyProfile,
  statement: Statement<number> | Statement<Range>,
  what?: string,
): SourcedValue {
  const path = pathsOf(profile).get(statement);
  if (path === undefined) throw new Error(`${profile.id} does not make this statement`);
  return {
    ...sourcedQuantity(profile, [...path, 'value'], statement.value, what),
    basis: statement.basis,
    source: statement.source ?? null,
    locator: statement.locator ?? null,
    reason: statement.reason ?? null,
    evidence: statement.evidence ?? null,
    interval: statement.interval ?? null,
  };
}

const paths = new WeakMap<AnyProfile, ReadonlyMap<unknown, Path>>();

/** Where each statement of a profile stands: every row of every table asks for some. */
function pathsOf(profile: AnyProfile): ReadonlyMap<unknown, Path> {
  const known =
    paths.get(profile) ?? new Map([...statementsOf(profile)].map(({ path, statement }) => [statement, path]));
  paths.set(profile, known);
  return known;
}

/** A plain quantity of a profile, such as a house rule; `what` is its label in the schema unless given. */
export function sourcedQuantity(
  profile: AnyProfile,
  path: Path,
  value: number | Range,
  what: string = labelAt(profile.kind, path),
): SourcedValue {
  const pointer = toPointer(path);
  const shape = shapeAt(shapes[profile.kind], path);
  if (shape?.type !== 'quantity') throw new Error(`${pointer} of a ${profile.kind} is no quantity`);
  return {
    key: `${profile.kind} ${profile.id} ${pointer}`,
    what,
    value,
    dimension: shape.dimension,
    basis: null,
    kind: profile.kind,
    id: profile.id,
    pointer,
    place: { file: profile.source.path, line: lineOfValue(profile.yaml, path) },
    source: null,
    locator: null,
    reason: null,
    evidence: null,
    interval: null,
  };
}
