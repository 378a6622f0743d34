import { expect, it } from 'vitest';
import { evenSteps, roundStepSize } from '../../../src/bench/layout/even-steps.ts';

it.each([
  [0.31, 'down', 0.2],
  [0.5, 'down', 0.5],
  [7, 'down', 5],
  [7, 'up', 10],
  [10, 'up', 10],
  [1.1, 'up', 2],
] as const)('rounds %d %s to %d', (value, side, size) => {
  expect(roundStepSize(value, side)).toBe(size);
});

it('gives the multiples of a step without the noise of binary fractions', () => {
  expect(evenSteps(0.1, 1, 3)).toEqual([0.1, 0.2, 0.3]);
  expect(evenSteps(5, 4, 3)).toEqual([]);
});
