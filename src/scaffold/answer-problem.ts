import { checkShape } from '../registry/form/check-shape.ts';
import type { Kind } from '../registry/kind.ts';
import { type Path, toPointer } from '../registry/shape.ts';
import type { Problem } from '../result.ts';
import { withValue } from './answers.ts';

/**
 * What is wrong with a value at a place of a new document, with the code and the words of `check`; null for nothing.
 * What the place lacks is no problem: it may come yet.
 */
export function answerProblem(kind: Kind, path: Path, value: unknown): Problem | null {
  const { hits } = checkShape(kind, withValue({ kind }, path, value));
  const place = toPointer(path);
  const hit = hits.find(
    ({ rule, path: at }) => rule !== 'shape/missing-key' && isWithin(toPointer(at), place),
  );
  if (hit === undefined) return null;
  const allowed = hit.allowed === undefined ? '' : ` (what would do: ${hit.allowed})`;
  return { code: hit.rule, message: `${hit.message}${allowed}`, help: hit.help ?? '' };
}

function isWithin(pointer: string, place: string): boolean {
  return pointer === place || pointer.startsWith(`${place}/`);
}
