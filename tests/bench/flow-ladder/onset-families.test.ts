import { describe, expect, test } from 'vitest';
import { onsetFamilies as referenceFamilies } from '../../../scripts/reference/onset-families.ts';
import {
  type Onset,
  type OnsetFamily,
  onsetFamilies,
} from '../../../src/bench/flow-ladder/onset-families.ts';
import { evenlySpread } from '../../../src/statistics/evenly-spread.ts';

/** The shape as the reference lays it out: in the units of the prior. */
const referenceShape: readonly ((onset: readonly number[], tolerance: number) => number[])[] = [
  ([slope = 0, powerOdds = 0, shareOdds = 0], tolerance) => {
    const power = 1 + 2 * chance(powerOdds);
    const top = 0.15 + 0.82 * chance(shareOdds);
    const argument = -Math.log1p(-tolerance / top);
    const slopeOfUnitStretch = (top - tolerance) * power * argument ** (1 - 1 / power);
    return [Math.log(slopeOfUnitStretch) - slope, power, top];
  },
  ([powerOdds = 0, shareOdds = 0]) => [
    Math.log(5) + Math.log(24) * chance(powerOdds),
    0.15 + 0.82 * chance(shareOdds),
  ],
  ([powerOdds = 0]) => [Math.log(4) + Math.log(25) * chance(powerOdds)],
  ([slopeOdds = 0, shareOdds = 0]) => [
    Math.log(1.5) + Math.log(8) * chance(slopeOdds),
    0.5 + 0.47 * chance(shareOdds),
  ],
];
const chance = (odds: number) => 1 / (1 + Math.exp(-odds));

const deliveredAt = (onset: Onset, flow: number) => onset.delivered(flow, Math.log(flow));

function shapesOf({ coordinates, shapeAt }: OnsetFamily, tolerance: number): (readonly number[])[] {
  return Array.from({ length: 200 }, (_, index) =>
    shapeAt(
      coordinates.map((_each, axis) => 0.01 + 0.98 * evenlySpread(index + 1, axis)),
      tolerance,
    ),
  );
}

describe.each(onsetFamilies.map((family, index) => [index, family] as const))(
  'family %i',
  (index, family) => {
    const onsetAt = (shape: readonly number[], tolerance: number) =>
      family.onsets(shape.slice(0, -1), tolerance)(shape.at(-1)!);
    const onsets = (tolerance: number) =>
      shapesOf(family, tolerance).flatMap((shape) => onsetAt(shape, tolerance) ?? []);

    test('misses the tolerance at its limit', () => {
      for (const tolerance of [0.03, 0.05, 0.1]) {
        const found = onsets(tolerance);
        expect(found.length).toBeGreaterThan(40);
        for (const onset of found) expect(1 - deliveredAt(onset, 1)).toBeCloseTo(tolerance, 9);
      }
    });

    test('never rises, and stays a share of the feed', () => {
      const flows = Array.from({ length: 60 }, (_, step) => 0.05 * (step + 1));
      for (const onset of onsets(0.05)) {
        const delivered = flows.map((flow) => deliveredAt(onset, flow));
        expect(delivered).toEqual(delivered.toSorted((one, other) => other - one));
        expect(delivered[0]).toBeLessThanOrEqual(1);
        expect(delivered.at(-1)).toBeGreaterThan(0);
      }
    });

    test('has the curves of the reference, and admits the same shapes', () => {
      for (const shape of shapesOf(family, 0.05)) {
        const onset = onsetAt(shape, 0.05);
        const missing = referenceFamilies[index]!.curve(1, 0.05, referenceShape[index]!(shape, 0.05));
        expect(onset === null).toBe(missing === null);
        for (const flow of onset === null ? [] : [0.7, 0.95, 1.02, 1.2]) {
          expect(1 - deliveredAt(onset!, flow)).toBeCloseTo(missing!(flow), 9);
        }
      }
    });

    test('has a prior density that adds up to the shapes that have a limit', () => {
      // Even quantiles are draws of the prior, so that the share admitted is what its density must add up to.
      const quantiles = Array.from({ length: 4096 }, (_, point) =>
        family.coordinates.map((_each, axis) => evenlySpread(point + 1, axis)),
      );
      const shapes = quantiles.map((each) => family.shapeAt(each, 0.05));
      const admitted = shapes.filter((shape) => onsetAt(shape, 0.05) !== null).length / shapes.length;
      expect(priorMass(family, 0.05)).toBeCloseTo(admitted, 1);
    });
  },
);

/** The prior density summed over a grid of the coordinates. */
function priorMass(family: OnsetFamily, tolerance: number): number {
  const step = 0.25;
  const grid = ({ low, high }: { low: number; high: number }) =>
    Array.from({ length: Math.round((high - low) / step) }, (_, node) => low + (node + 0.5) * step);
  const grids = family.coordinates.map(grid);
  const last = grids.at(-1)!;
  const outer = grids
    .slice(0, -1)
    .reduce<number[][]>((points, axis) => points.flatMap((point) => axis.map((at) => [...point, at])), [[]]);
  let mass = 0;
  for (const point of outer) {
    const onsets = family.onsets(point, tolerance);
    for (const at of last) mass += Math.exp(onsets(at)?.logPrior ?? Number.NEGATIVE_INFINITY);
  }
  return mass * step ** family.coordinates.length;
}
