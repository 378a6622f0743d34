import { compareText } from './finding.ts';
import type { Statement } from './generated/documents.ts';
import { shapes } from './generated/shapes.ts';
import type { Kind } from './kind.ts';
import type { AnyProfile, ReadDocument } from './profile.ts';
import { isObject, isStatementShape, leavesOf, type Path } from './shape.ts';

export type Basis = Statement<unknown>['basis'];
export type Conditions = NonNullable<Statement<unknown>['at']>;

/** Bases from the strongest to the weakest. */
export const basesByStrength: readonly Basis[] = ['measured', 'published', 'derived', 'claimed', 'assumed'];

/** The weaker of two bases: what a value that rests on both may call its own. */
export function weakerBasis(a: Basis, b: Basis): Basis {
  return basesByStrength.indexOf(a) >= basesByStrength.indexOf(b) ? a : b;
}

/**
 * The statement that counts under given conditions: of those whose conditions all fit, the most specific; then
 * the strongest basis; then the newest; then the first.
 */
export function chooseStatement<Value>(
  statements: readonly Statement<Value>[] | undefined,
  conditions: Conditions,
): Statement<Value> | null {
  return statementsByWeight(statements, ({ at }) => at ?? {}, conditions)[0] ?? null;
}

/**
 * The limit that counts under given conditions. Where several were measured under the same ones (batches, repeated
 * runs), it is the one on the safe side: the lowest of limits that are safe below, the highest of others.
 */
export function chooseLimit(
  statements: readonly Statement<number>[] | undefined,
  conditions: Conditions,
  safe: 'below' | 'above',
): Statement<number> | null {
  const byWeight = statementsByWeight(statements, ({ at }) => at ?? {}, conditions);
  return safestOf(byWeight, conditions, safe);
}

/** Of statements by weight, the first, or the safest of those that were measured under its conditions. */
export function safestOf(
  byWeight: readonly Statement<number>[],
  conditions: Conditions,
  safe: 'below' | 'above',
): Statement<number> | null {
  const [first] = byWeight;
  if (first === undefined) return null;
  const isSafer = (a: number, b: number) => (safe === 'below' ? a < b : a > b);
  return besideOf(first, byWeight, conditions).reduce(
    (safest, other) => (isSafer(other.value, safest.value) ? other : safest),
    first,
  );
}

/** The statements that were measured under the same conditions as one, itself among them. */
export function besideOf<Value>(
  one: Statement<Value>,
  statements: readonly Statement<Value>[],
  conditions: Conditions,
): Statement<Value>[] {
  if (one.basis !== 'measured') return [one];
  const telling = tellingConditions(one.at ?? {}, conditions);
  return statements.filter(
    ({ basis, at }) => basis === 'measured' && areSame(telling, tellingConditions(at ?? {}, conditions)),
  );
}

function areSame(one: Conditions, other: Conditions): boolean {
  const names = new Set([...conditionNames(one), ...conditionNames(other)]);
  return [...names].every((name) => one[name] === other[name]);
}

/** The statements that fit given conditions, the one that counts first; `conditionsOf` says what each one requires. */
export function statementsByWeight<Value>(
  statements: readonly Statement<Value>[] | undefined,
  conditionsOf: (statement: Statement<Value>) => Conditions,
  conditions: Conditions,
): Statement<Value>[] {
  return (statements ?? [])
    .filter((statement) => fits(conditionsOf(statement), conditions))
    .sort((a, b) => moreTelling(a, b, (statement) => tellingConditions(conditionsOf(statement), conditions)));
}

function fits(required: Conditions, given: Conditions): boolean {
  return conditionNames(required).every(
    (name) => required[name] === given[name] || (name === 'batch' && given.batch === undefined),
  );
}

/** What a statement requires where it is known which batch is printed, or is not. */
function tellingConditions({ batch, ...rest }: Conditions, given: Conditions): Conditions {
  return batch === undefined || given.batch === undefined ? rest : { ...rest, batch };
}

function conditionNames(conditions: Conditions): (keyof Conditions)[] {
  return Object.keys(conditions) as (keyof Conditions)[];
}

function moreTelling<Value>(
  a: Statement<Value>,
  b: Statement<Value>,
  conditionsOf: (statement: Statement<Value>) => Conditions,
): number {
  return (
    conditionNames(conditionsOf(b)).length - conditionNames(conditionsOf(a)).length ||
    basesByStrength.indexOf(a.basis) - basesByStrength.indexOf(b.basis) ||
    compareText(b.date ?? '', a.date ?? '')
  );
}

/** A statement with its place in the document. */
export interface PlacedStatement<Content> {
  readonly path: Path;
  readonly statement: Content;
}

/** Every statement that a profile makes. */
export function* statementsOf(profile: AnyProfile): Generator<PlacedStatement<Statement<unknown>>> {
  for (const { path, statement } of placedStatements(profile.kind, profile.data)) {
    // The shape of a statement stands for a value that the statement schema has accepted.
    yield { path, statement: statement as unknown as Statement<unknown> };
  }
}

/** Every statement of a document as it is written; nothing about its content is certain. */
export function writtenStatements(
  document: ReadDocument,
): Generator<PlacedStatement<Readonly<Record<string, unknown>>>> {
  return placedStatements(document.kind, document.written);
}

function* placedStatements(
  kind: Kind,
  value: unknown,
): Generator<PlacedStatement<Readonly<Record<string, unknown>>>> {
  for (const leaf of leavesOf('object', shapes[kind], value)) {
    if (isStatementShape(leaf.shape) && isObject(leaf.value))
      yield { path: leaf.path, statement: leaf.value };
  }
}
