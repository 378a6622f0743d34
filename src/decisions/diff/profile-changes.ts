import type { Statement } from '../../registry/generated/documents.ts';
import type { SafeDirection } from '../../registry/key-facts.ts';
import type { Kind } from '../../registry/kind.ts';
import type { AnyProfile } from '../../registry/profile.ts';
import { type Basis, type Conditions, chooseLimit, chooseStatement } from '../../registry/statement.ts';
import type { Dimension } from '../../units/dimension.ts';
import { bumpOfChange, safeDirectionOf } from './change-bump.ts';
import type { Bump } from './profile-bump.ts';
import { conditionsKey, entriesOf, type ProfileEntry } from './profile-entries.ts';
import { isSameValue } from './same-value.ts';

/** A value on one side of a change: canonical number, range, sum of money, word. */
export interface ChangeSide {
  readonly value: unknown;
  /** What it rests on; null where it is no statement. */
  readonly basis: Basis | null;
  /** Whether the trial that it rests on was simulated. */
  readonly isSimulated: boolean;
}

/** Ids of the simulated trials of the two registries. */
export interface SimulatedTrials {
  readonly base: ReadonlySet<string>;
  readonly head: ReadonlySet<string>;
}

/** One thing that two versions of a profile say differently. */
export interface ProfileChange {
  /** `hotEnds/main/temperatureLimit`. */
  readonly name: string;
  /** Conditions of the statement; empty where it holds in general. */
  readonly conditions: Conditions;
  /** What the value measures; null for words. */
  readonly dimension: Dimension | null;
  /** Null where it was not there. */
  readonly base: ChangeSide | null;
  /** Null where it is gone. */
  readonly head: ChangeSide | null;
  readonly bump: Bump;
}

/** What two versions of a profile say differently, in the order of the schema, what is gone last. */
export function profileChanges(
  base: AnyProfile,
  head: AnyProfile,
  simulated: SimulatedTrials,
): ProfileChange[] {
  const before = entriesOf(base);
  const after = entriesOf(head);
  const gone = [...before.values()].filter(({ name }) => !after.has(name));
  const differences = [
    ...[...after.values()].map((entry) => [before.get(entry.name) ?? null, entry] as const),
    ...gone.map((entry) => [entry, null] as const),
  ];
  const changes = [
    ...differences.flatMap(([old, now]) => entryChanges(head.kind, old, now, simulated)),
    ...sheetChanges(base, head),
  ];
  return changes.filter(({ name }) => !changes.some((other) => isWholeOf(other, name)));
}

/** The readings of a trial in a sheet beside it. */
function sheetChanges(base: AnyProfile, head: AnyProfile): ProfileChange[] {
  const [before = null, after = null] = [base, head].map(sheetSide);
  if (before?.value === after?.value) return [];
  const name = 'observations/sheet';
  return [{ name, conditions: {}, dimension: null, base: before, head: after, bump: 'patch' }];
}

function sheetSide({ attachment }: AnyProfile): ChangeSide | null {
  return attachment?.ok
    ? { value: `sha256 ${attachment.source.digest}`, basis: null, isSimulated: false }
    : null;
}

/** Whether a change is an item that came or went as a whole, with what the name stands for in it. */
function isWholeOf({ name, base, head }: ProfileChange, inner: string): boolean {
  return (base === null || head === null) && inner.startsWith(`${name}/`);
}

function entryChanges(
  kind: Kind,
  base: ProfileEntry | null,
  head: ProfileEntry | null,
  simulated: SimulatedTrials,
): ProfileChange[] {
  const entry = head ?? base;
  if (entry === null) return [];
  const { name, place, content } = entry;
  const safe = safeDirectionOf(
    kind,
    place,
    content.type === 'word' || content.type === 'item' ? null : content.quantity,
  );
  if (content.type === 'statements') {
    return statementChanges(statementsIn(base), statementsIn(head), safe, simulated).map((change) => ({
      ...change,
      name,
      dimension: content.quantity.dimension,
    }));
  }
  const [before, after] = [valueIn(base), valueIn(head)];
  // The parts of an item are compared each on its own.
  const isSame = content.type === 'item' ? before !== null && after !== null : isSameValue(before, after);
  if (isSame) return [];
  const dimension = 'quantity' in content ? (content.quantity?.dimension ?? null) : null;
  const bump = bumpOfChange(safe, before, after);
  return [{ name, conditions: {}, dimension, base: before, head: after, bump }];
}

function statementsIn(entry: ProfileEntry | null): readonly Statement<unknown>[] {
  return entry?.content.type === 'statements' ? entry.content.statements : [];
}

function valueIn(entry: ProfileEntry | null): ChangeSide | null {
  if (entry === null || entry.content.type === 'statements') return null;
  return { value: entry.content.value, basis: null, isSimulated: false };
}

/**
 * For all conditions that either side names, with their batch and without, the statement that counts under them before and
 * after: a new statement with narrower conditions, or of another batch, is a change of what held there until now.
 */
function statementChanges(
  base: readonly Statement<unknown>[],
  head: readonly Statement<unknown>[],
  safe: SafeDirection,
  simulated: SimulatedTrials,
): Pick<ProfileChange, 'conditions' | 'base' | 'head' | 'bump'>[] {
  const stated = [...head, ...base].map(({ at = {} }) => at);
  const named = new Map(
    [...stated, ...stated.map(withoutBatch)].map((at) => [conditionsKey(at), at] as const),
  );
  const changes = [...named.values()].flatMap((conditions) => {
    const old = countingSide(base, conditions, safe, simulated.base);
    const now = countingSide(head, conditions, safe, simulated.head);
    if (isSameValue(old, now)) return [];
    return [{ conditions, base: old, head: now, bump: bumpOfChange(safe, old, now) }];
  });
  if (changes.length > 0 || isSameValue(base, head)) return changes;
  const [first] = head;
  const side = first === undefined ? null : sideOf(first, simulated.head);
  return [{ conditions: first?.at ?? {}, base: side, head: side, bump: 'patch' }];
}

function withoutBatch({ batch: _, ...rest }: Conditions): Conditions {
  return rest;
}

/** Of several measured limits of the same conditions the one on the safe side counts, as in tables. */
function countingSide(
  statements: readonly Statement<unknown>[],
  conditions: Conditions,
  safe: SafeDirection,
  simulated: ReadonlySet<string>,
): ChangeSide | null {
  const hasSafeSide = safe === 'below' || safe === 'above';
  const chosen =
    hasSafeSide && statements.every(isNumeric)
      ? chooseLimit(statements, conditions, safe)
      : chooseStatement(statements, conditions);
  return chosen === null ? null : sideOf(chosen, simulated);
}

function isNumeric(statement: Statement<unknown>): statement is Statement<number> {
  return typeof statement.value === 'number';
}

function sideOf({ value, basis, evidence }: Statement<unknown>, simulated: ReadonlySet<string>): ChangeSide {
  return { value, basis, isSimulated: evidence !== undefined && simulated.has(evidence) };
}
