import { spaces, trimSpaces } from './number-form.ts';
import { looseNumber } from './number-problem.ts';

/** A text cut at the sign between two numbers. */
export interface RangeParts {
  readonly left: string;
  readonly separator: string;
  readonly right: string;
}

const otherSeparator = new RegExp(`^[${spaces}]*(\\.{2,}|…|-|–|—|~|to\\b)`);
const longestText = 200;

/** Cuts a range at its first `..`, the only separator that is read. */
export function cutAtDots(text: string): RangeParts | undefined {
  const at = text.indexOf('..');
  if (at < 0 || text.charAt(at + 2) === '.') return undefined;
  return { left: trimSpaces(text.slice(0, at)), separator: '..', right: trimSpaces(text.slice(at + 2)) };
}

/**
 * Recognises a range however it is written (`190-235 Cel`, `190 to 235 Cel`, `190 Cel..235 Cel`), for messages.
 */
export function splitRange(text: string): RangeParts | undefined {
  const trimmed = trimSpaces(text.slice(0, longestText));
  const dots = cutAtDots(trimmed);
  if (dots !== undefined)
    return startsWithNumber(dots.left) && startsWithNumber(dots.right) ? dots : undefined;
  const left = looseNumber(trimmed);
  const separator = otherSeparator.exec(trimmed.slice(left.length))?.[0];
  if (left === '' || separator === undefined) return undefined;
  const right = trimSpaces(trimmed.slice(left.length + separator.length));
  return startsWithNumber(right) ? { left, separator: trimSpaces(separator), right } : undefined;
}

function startsWithNumber(text: string): boolean {
  return looseNumber(text) !== '';
}
