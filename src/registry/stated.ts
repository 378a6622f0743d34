import type { Statement } from './generated/documents.ts';
import type { Path } from './shape.ts';

/** A statement with the path of its value in the document. */
export interface Stated<Value> {
  readonly value: Value;
  /** Path of the value. */
  readonly path: Path;
  readonly statement: Statement<Value>;
}

/** The statements of one property, each with its place; `path` is where the property stands. */
export function stated<Value>(
  statements: readonly Statement<Value>[] | undefined,
  path: Path,
): Stated<Value>[] {
  return (statements ?? []).map((statement, index) => ({
    value: statement.value,
    path: [...path, index, 'value'],
    statement,
  }));
}

/** The largest of the values stated, or null where nothing is stated. */
export function highestStated(statements: readonly Statement<number>[] | undefined): number | null {
  const values = (statements ?? []).map(({ value }) => value);
  return values.length === 0 ? null : Math.max(...values);
}
