import { factOf } from '../../registry/facts-of-key.ts';
import { safeDirections } from '../../registry/generated/key-facts.ts';
import type { SafeDirection } from '../../registry/key-facts.ts';
import type { Kind } from '../../registry/kind.ts';
import { isObject, type QuantityShape } from '../../registry/shape.ts';
import type { Bump } from './profile-bump.ts';
import { isSameValue } from './same-value.ts';

interface Side {
  readonly value: unknown;
}

/**
 * On which side a value of a place is safe. Where the schema does not say so the cautious answer counts: to stay within
 * a range, to keep a quantity as it is; words are not used.
 */
export function safeDirectionOf(kind: Kind, place: string, quantity: QuantityShape | null): SafeDirection {
  const cautious = quantity === null ? 'unused' : quantity.form === 'range' ? 'within' : 'same';
  return factOf<SafeDirection>(safeDirections, kind, place) ?? cautious;
}

/** The bump that a change needs, by the safe direction of its place; null stands for what is not there. */
export function bumpOfChange(safe: SafeDirection, base: Side | null, head: Side | null): Bump {
  if (safe === 'unused') return 'patch';
  if (base === null) return safe === 'same' ? 'major' : 'minor';
  if (head === null) return safe === 'any' ? 'minor' : 'major';
  return bumpBetween(safe, base.value, head.value);
}

function bumpBetween(safe: Exclude<SafeDirection, 'unused'>, base: unknown, head: unknown): Bump {
  switch (safe) {
    case 'same':
      return isSameValue(base, head) ? 'patch' : 'major';
    case 'any':
      return isSameValue(base, head) ? 'patch' : 'minor';
    case 'present':
      return isSameValue(base, head) ? 'patch' : head === true ? 'minor' : 'major';
    case 'below':
      return byDirection(base, head, [1, 1]);
    case 'above':
      return byDirection(base, head, [-1, -1]);
    case 'within':
      return byDirection(base, head, [-1, 1]);
    default:
      return safe satisfies never;
  }
}

/** Ends of a quantity: a single one has the same at both. */
function endsOf(value: unknown): readonly [number, number] | null {
  if (typeof value === 'number') return [value, value];
  if (!isObject(value) || typeof value.low !== 'number' || typeof value.high !== 'number') return null;
  return [value.low, value.high];
}

/** Major if an end moves so that its old place is not on the safe side of the new one, minor if it moves the other way. */
function byDirection(base: unknown, head: unknown, safe: readonly [number, number]): Bump {
  const [before, after] = [endsOf(base), endsOf(head)];
  if (before === null || after === null) return 'major';
  const moves = [(after[0] - before[0]) * safe[0], (after[1] - before[1]) * safe[1]];
  if (moves.some((move) => move < 0)) return 'major';
  return moves.some((move) => move > 0) ? 'minor' : 'patch';
}
