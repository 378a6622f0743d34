import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { reduceDiameterSurvey } from '../../../src/bench/diameter-survey/reduce-diameter-survey.ts';
import { randomSource } from '../../../src/statistics/random.ts';
import { covers, observationsOf, resultOf } from '../observations-of.ts';

const settings = { filamentDiameter: 1.75, lengthResolution: 0.001, lengthAccuracy: 0.004 };

/** A filament with a normal spread, read with a micrometer whose error is the same for all readings. */
function filament(mean: number, spread: number, oval: number, seed: string) {
  const random = randomSource(seed);
  const error = 0.004 * (2 * random.uniform() - 1);
  const read = (value: number) => Math.round((value + error) * 1000) / 1000;
  const middles = Array.from({ length: 20 }, () => mean + spread * random.normal());
  return observationsOf({
    position: middles.map((_, index) => 500 * index),
    firstDiameter: middles.map((middle) => read(middle + oval / 2)),
    secondDiameter: middles.map((middle) => read(middle - oval / 2)),
  });
}

describe('a diameter survey', () => {
  test('brackets the known mean, spread and flow error of filaments about as often as it says', {
    tags: 'long',
  }, () => {
    const held = Array.from({ length: 160 }, (_, index) => {
      const [mean, spread] = [1.73 + index / 4000, 0.004 + (index % 10) / 1000];
      const reduced = reduceDiameterSurvey(filament(mean, spread, 0.006, `filament ${index}`), settings);
      return [
        covers(resultOf(reduced, 'meanDiameter'), mean),
        covers(resultOf(reduced, 'diameterSpread'), spread),
        covers(resultOf(reduced, 'flowError'), (mean / 1.75) ** 2 - 1),
      ];
    }).flat();
    expect(held.filter(Boolean).length / held.length).toBeGreaterThanOrEqual(0.9);
  });

  test('finds the ovality of a steady filament', () => {
    const ovality = resultOf(reduceDiameterSurvey(filament(1.75, 0.002, 0.02, 'oval'), settings), 'ovality');
    expect(ovality.value).toBeCloseTo(0.02, 3);
  });

  test('has a flow error of twice the relative error of the diameter', () => {
    fc.assert(
      fc.property(fc.double({ min: 1.7, max: 1.8, noNaN: true }), (mean) => {
        const flow = resultOf(
          reduceDiameterSurvey(filament(mean, 0, 0, 'flat'), settings),
          'flowError',
        ).value;
        expect(Math.abs(flow - 2 * (mean / 1.75 - 1))).toBeLessThan(0.008);
      }),
      { numRuns: 20, seed: 7 },
    );
  });

  test('is no better than its gauge', () => {
    const readings = filament(1.75, 0.001, 0, 'gauge');
    const width = (lengthAccuracy: number) => {
      const { interval } = resultOf(
        reduceDiameterSurvey(readings, { ...settings, lengthAccuracy }),
        'meanDiameter',
      );
      return (interval.high ?? 0) - (interval.low ?? 0);
    };
    expect(width(0.02)).toBeGreaterThan(0.036);
    expect(width(0.002)).toBeLessThan(0.006);
  });

  test('says which places are outside the tolerance', () => {
    const reduced = reduceDiameterSurvey(filament(1.79, 0.002, 0, 'thick'), {
      ...settings,
      diameterTolerance: 0.03,
    });
    expect(reduced.ok && reduced.value.warnings[0]).toMatch(/^20 of 20 places are outside 1.75 mm ± 0.03 mm/);
  });

  test('refuses the readings of another filament', () => {
    expect(reduceDiameterSurvey(filament(2.85, 0.01, 0, 'other'), settings)).toMatchObject({
      ok: false,
      error: [{ code: 'implausibleReading' }, { code: 'implausibleReading' }],
    });
  });
});
