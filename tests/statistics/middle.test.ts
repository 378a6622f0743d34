import { expect, it } from 'vitest';
import { median, middle } from '../../src/statistics/middle.ts';

it('is half-way between the ends of a range', () => {
  expect(middle({ low: 190, high: 235 })).toBe(212.5);
});

it.each([
  [[], null],
  [[3], 3],
  [[3, 1], 2],
  [[9, 1, 4], 4],
  [[8, 1, 4, 2], 3],
])('the median of %j is %j', (values, expected) => {
  expect(median(values)).toBe(expected);
});
