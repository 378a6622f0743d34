import { describe, expect, test } from 'vitest';
import { onsetFamilies } from '../../../src/bench/flow-ladder/onset-families.ts';
import { randomSource } from '../../../src/statistics/random.ts';

const limit = 40;

describe.each(onsetFamilies.map((family, index) => [index, family] as const))(
  'family %i',
  (index, family) => {
    const random = randomSource(`family ${index}`);
    const shapes = Array.from({ length: 300 }, () => family.drawShape(random));
    const curves = (tolerance: number) =>
      shapes.flatMap((shape) => family.curve(limit, tolerance, shape) ?? []);

    test('reaches the tolerance at its limit', () => {
      for (const tolerance of [0.03, 0.05, 0.1]) {
        for (const curve of curves(tolerance)) expect(curve(limit)).toBeCloseTo(tolerance, 9);
      }
    });

    test('never falls, and stays a share of the feed', () => {
      const flows = Array.from({ length: 60 }, (_, step) => 2 * (step + 1));
      for (const curve of curves(0.05)) {
        const missing = flows.map(curve);
        expect(missing).toEqual(missing.toSorted((one, other) => one - other));
        expect(missing[0]).toBeGreaterThanOrEqual(0);
        expect(missing.at(-1)).toBeLessThan(1);
      }
    });

    test('gives every shape that it draws a density', () => {
      for (const shape of shapes) expect(family.logPrior(shape)).toBeGreaterThan(Number.NEGATIVE_INFINITY);
      expect(family.logPrior(shapes[0]!.map(() => 1000))).toBe(Number.NEGATIVE_INFINITY);
    });

    test('scales with the flow', () => {
      for (const shape of shapes) {
        const [one, twice] = [family.curve(limit, 0.05, shape), family.curve(2 * limit, 0.05, shape)];
        if (one !== null && twice !== null) expect(twice(90)).toBeCloseTo(one(45), 9);
      }
    });
  },
);
