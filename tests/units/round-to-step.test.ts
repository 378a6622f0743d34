import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clean, roundDown, roundUp } from '../../src/units/round-to-step.ts';

const anyValue = fc.double({ min: 1e-3, max: 1e5, noNaN: true });
const anyStep = fc.constantFrom(0.01, 0.05, 0.1, 0.5, 1, 5, 50, 100);

describe('rounding down', () => {
  it.each([
    [112.5, 1, 112],
    [112, 1, 112],
    [0.3, 0.1, 0.3],
    [23.39, 0.1, 23.3],
    [9999, 50, 9950],
  ])('%d in steps of %d is %d', (value, step, rounded) => expect(roundDown(value, step)).toBe(rounded));

  it('takes a finer step where a whole one would leave nothing', () => {
    expect(roundDown(0.37, 1)).toBe(0.3);
    expect(roundDown(0.037, 1)).toBe(0.03);
  });

  it('of nothing, or less, is nothing', () => {
    expect(roundDown(0, 1)).toBe(0);
    expect(roundDown(-3, 1)).toBe(0);
  });

  it('never rises, never falls by a step, never ends at zero', () => {
    fc.assert(
      fc.property(anyValue, anyStep, (value, step) => {
        const rounded = roundDown(value, step);
        expect(rounded).toBeGreaterThan(0);
        expect(rounded).toBeLessThanOrEqual(value * (1 + 2e-9));
        expect(rounded).toBeGreaterThan(value - step);
      }),
    );
  });

  it('twice is once', () => {
    fc.assert(
      fc.property(anyValue, anyStep, (value, step) => {
        const once = roundDown(value, step);
        expect(roundDown(once, step)).toBe(once);
      }),
    );
  });

  it('keeps the order of values', () => {
    fc.assert(
      fc.property(anyValue, anyValue, anyStep, (a, b, step) => {
        expect(roundDown(Math.min(a, b), step)).toBeLessThanOrEqual(roundDown(Math.max(a, b), step));
      }),
    );
  });
});

describe('rounding up', () => {
  it.each([
    [0.31, 0.1, 0.4],
    [0.3, 0.1, 0.3],
    [0, 0.1, 0],
    [1.2000000000000002, 0.1, 1.2],
  ])('%d in steps of %d is %d', (value, step, rounded) => expect(roundUp(value, step)).toBe(rounded));

  it('never falls and never rises by a step', () => {
    fc.assert(
      fc.property(anyValue, anyStep, (value, step) => {
        const rounded = roundUp(value, step);
        expect(rounded).toBeGreaterThanOrEqual(value * (1 - 2e-9));
        expect(rounded).toBeLessThan(value + step);
      }),
    );
  });
});

it('leaves no digits that only binary fractions have', () => {
  expect(clean(3 * 0.1)).toBe(0.3);
  expect(clean(0.1 + 0.2)).toBe(0.3);
});
