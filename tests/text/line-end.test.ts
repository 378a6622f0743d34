import { expect, it } from 'vitest';
import { lineEnd } from '../../src/text/line-end.ts';

it.each([
  ['within a line', 'ab\ncd\n', 1, 3],
  ['at the beginning of a line, where nothing is to be passed', 'ab\ncd\n', 3, 3],
  ['in a last line without a break', 'ab\ncd', 4, 5],
  ['at the beginning of the text', 'ab\n', 0, 3],
])('finds the end %s', (_, text, offset, end) => {
  expect(lineEnd(text, offset)).toBe(end);
});
