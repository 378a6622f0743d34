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

/** The statements that fit given conditions, the one that counts first; `conditionsOf` says what each one requires. */
export function statementsByWeight<Value>(
  statements: readonly Statement<Value>[] | undefined,
  conditionsOf: (statement: Statement<Value>) => Conditions,
  conditions: Conditions,
): Statement<Value>[] {
  return (statements ?? [])
    .filter((statement) => fits(conditionsOf(statement), conditions))
    .sort((a, b) => moreTelling(a, b, conditionsOf));
}

function fits(required: Conditions, given: Conditions): boolean {
  return conditionNames(required).every((name) => required[name] === given[name]);
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
