import { describe, expect, test } from 'vitest';
import { reduceReferencePrint } from '../../../src/bench/reference-print/reduce-reference-print.ts';
import { observationsOf, resultOf } from '../observations-of.ts';

describe('a reference print', () => {
  test('gives the mean time and mass of the prints', () => {
    const reduced = reduceReferencePrint(
      observationsOf({ printTime: [11000, 11100], mass: [41.2, 41.4] }),
      {},
    );
    expect(resultOf(reduced, 'printTime').value).toBeCloseTo(11050, 6);
    expect(resultOf(reduced, 'printMass').value).toBeCloseTo(41.3, 6);
  });

  test('of one print has an interval all the same, and a warning', () => {
    const reduced = reduceReferencePrint(observationsOf({ printTime: [11000] }), {});
    const { low, high } = resultOf(reduced, 'printTime').interval;
    expect(high! - low!).toBeGreaterThan(100);
    expect(reduced.ok && reduced.value.warnings).toHaveLength(1);
  });

  test('is surer with more prints that agree', () => {
    const width = (count: number) => {
      const times = Array.from({ length: count }, (_, index) => 11000 + 5 * index);
      const { low, high } = resultOf(
        reduceReferencePrint(observationsOf({ printTime: times }), {}),
        'printTime',
      ).interval;
      return high! - low!;
    };
    expect(width(4)).toBeLessThan(width(1) / 2);
  });
});
