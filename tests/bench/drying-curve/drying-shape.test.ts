import { describe, expect, test } from 'vitest';
import { cylinderLeft } from '../../../src/bench/drying-curve/drying-shape.ts';
import { reduceDryingCurve } from '../../../src/bench/drying-curve/reduce-drying-curve.ts';
import { cylinderMeanTheta } from '../../../src/physics/cylinder-conduction.ts';
import { randomSource } from '../../../src/statistics/random.ts';
import { covers, observationsOf, resultOf } from '../observations-of.ts';

const firstSquare = 2.404825558 ** 2;
/** Time constants after which a sixth is left: the first term of the series is all that counts. */
const sixthLeft = -Math.log(firstSquare / 4 / 6);

describe('the shape of a cylinder', () => {
  // Crank, The Mathematics of Diffusion, chapter 1: diffusion and conduction obey one equation.
  test.each([0.01, 0.1, 0.12, 0.3, 1, 3, 8])(
    'is that of a cooling cylinder after %d time constants',
    (elapsed) => {
      expect(cylinderLeft(elapsed)).toBeCloseTo(cylinderMeanTheta(elapsed / firstSquare), 4);
    },
  );

  test('begins faster than one exponential and ends with the same slope', () => {
    expect(cylinderLeft(0.05)).toBeLessThan(Math.exp(-0.05));
    expect(cylinderLeft(7) / cylinderLeft(6)).toBeCloseTo(Math.exp(-1), 6);
    expect(cylinderLeft(4) / cylinderLeft(4 - 1e-9)).toBeCloseTo(1, 6);
  });
});

test('a filament that dries by diffusion is not said to be dry too early', { tags: 'long' }, () => {
  const hour = 3600;
  const elapsedTime = [0, 0.5, 1, 2, 3, 4, 6, 8, 10, 12, 14, 16].map((hours) => hours * hour);
  const held = Array.from({ length: 60 }, (_, index) => {
    const random = randomSource(`fick ${index}`);
    const timeConstant = hour * (1.5 + (index % 20) / 10);
    const mass = elapsedTime.map(
      (time) => 1180 + 6 * cylinderMeanTheta(time / timeConstant / firstSquare) + 0.02 * random.normal(),
    );
    const reduced = reduceDryingCurve(observationsOf({ elapsedTime, mass }), {
      residualMoisture: 0.001,
      reelMass: 180,
      massResolution: 0.01,
    });
    return covers(resultOf(reduced, 'dryingTime'), timeConstant * sixthLeft);
  });
  expect(held.filter(Boolean).length / held.length).toBeGreaterThanOrEqual(0.88);
});
