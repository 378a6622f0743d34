import { describe, expect, test } from 'vitest';
import { simulatePrints } from '../../../scripts/methods/simulate-prints.ts';
import { coverageOf } from '../../../scripts/methods/simulated-bench.ts';
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

  test('that two prints disagree is told with the figures, and makes the interval wide', () => {
    const reduced = reduceReferencePrint(observationsOf({ printTime: [1920, 2100], mass: [29.1, 29.2] }), {});
    expect(reduced.ok && reduced.value.warnings).toEqual([
      expect.stringMatching(
        /^The print times range from 32 min to 35 min: they scatter by 6.3 %.* usually by 0.3 %/,
      ),
    ]);
    const { low, high } = resultOf(reduced, 'printTime').interval;
    expect(high! - low!).toBeGreaterThan(6 * (2100 - 1920));
  });

  test('that the masses disagree is told too', () => {
    const reduced = reduceReferencePrint(observationsOf({ printTime: [1920, 1921], mass: [29.1, 33] }), {});
    expect(reduced.ok && reduced.value.warnings).toEqual([
      expect.stringMatching(/^The print masses range from 29.1 g to 33 g/),
    ]);
  });

  test('that prints differ as they usually do is not worth a word, and a little more is only a little wider', () => {
    const width = (second: number) => {
      const reduced = reduceReferencePrint(observationsOf({ printTime: [10_000, second] }), {});
      const { low, high } = resultOf(reduced, 'printTime').interval;
      return { width: high! - low!, told: reduced.ok && reduced.value.warnings.length > 0 };
    };
    expect(width(10_100).told).toBe(false);
    expect(width(10_120).told).toBe(true);
    const first = Array.from({ length: 40 }, (_, index) => width(10_090 + index).width);
    for (const [index, wide] of first.entries()) expect(wide).toBeLessThan(1.5 * (first[index - 1] ?? wide));
  });

  test('prints hold the truth about as often as they say, and where they scatter far, less often but with a word', {
    tags: 'long',
  }, () => {
    const { rows } = coverageOf('referencePrint', simulatePrints, 900, 700_000);
    for (const { kind, covered, warned } of rows) {
      expect(covered).toBeGreaterThan(kind === 'usual' ? 0.95 : 0.85);
      if (kind === 'usual') expect(warned).toBeLessThan(0.04);
      if (kind === 'ten times the usual') expect(warned).toBeGreaterThan(0.94);
    }
  });
});
