import { isObject } from '../../registry/shape.ts';
import type { Bump } from './profile-bump.ts';
import type { Sense } from './safe-direction.ts';
import { isSameValue } from './same-value.ts';

interface Side {
  readonly value: unknown;
}

/** The bump that a change needs, by the sense of its place; null stands for what is not there. */
export function bumpOfChange(sense: Sense, base: Side | null, head: Side | null): Bump {
  if (sense === 'note') return 'patch';
  if (base === null) return sense === 'fixed' ? 'major' : 'minor';
  if (head === null) return sense === 'figure' ? 'minor' : 'major';
  return bumpBetween(sense, base.value, head.value);
}

function bumpBetween(sense: Exclude<Sense, 'note'>, base: unknown, head: unknown): Bump {
  switch (sense) {
    case 'fixed':
    case 'member':
      return isSameValue(base, head) ? 'patch' : 'major';
    case 'figure':
      return isSameValue(base, head) ? 'patch' : 'minor';
    case 'ability':
      return head === base ? 'patch' : head === true ? 'minor' : 'major';
    case 'ceiling':
      return byDirection(base, head, [1, 1]);
    case 'floor':
      return byDirection(base, head, [-1, -1]);
    case 'window':
      return byDirection(base, head, [-1, 1]);
    default:
      return sense satisfies never;
  }
}

/** Ends of a quantity: a single one has the same at both. */
function endsOf(value: unknown): readonly [number, number] | null {
  if (typeof value === 'number') return [value, value];
  if (!isObject(value) || typeof value.low !== 'number' || typeof value.high !== 'number') return null;
  return [value.low, value.high];
}

/** Major if an end moves against the direction that leaves old tables safe, minor if one moves along with it. */
function byDirection(base: unknown, head: unknown, safe: readonly [number, number]): Bump {
  const [before, after] = [endsOf(base), endsOf(head)];
  if (before === null || after === null) return 'major';
  const moves = [(after[0] - before[0]) * safe[0], (after[1] - before[1]) * safe[1]];
  if (moves.some((move) => move < 0)) return 'major';
  return moves.some((move) => move > 0) ? 'minor' : 'patch';
}
