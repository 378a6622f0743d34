import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { simulateDiameter } from '../../../scripts/methods/simulate-diameter.ts';
import { type Coverage, coverageOf } from '../../../scripts/methods/simulated-bench.ts';
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

let counted: readonly Coverage[] | undefined;
/** Counted once for several tests, over benches that nothing was tuned on. */
function ovalityCoverage(): readonly Coverage[] {
  counted ??= coverageOf('diameterSurvey', simulateDiameter, 1800, 700_000).rows.filter(
    ({ quantity }) => quantity === 'ovality',
  );
  return counted;
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

  test('holds 0 for a round strand, whose readings differ all the same', { tags: 'long' }, () => {
    for (const kind of ['round, read once', 'round, caliper', 'round, read twice']) {
      const held = ovalityCoverage().find((row) => row.kind === kind);
      expect(held?.covered).toBeGreaterThan(0.94);
    }
  });

  test('brackets the ovality of oval and turning strands, read once or twice', { tags: 'long' }, () => {
    for (const { covered } of ovalityCoverage()) expect(covered).toBeGreaterThan(0.92);
  });

  test('takes repeated places as one, and learns from them what reading alone scatters', () => {
    const [ones, others] = [
      [1.75, 1.752, 1.749, 1.751, 1.75, 1.753],
      [1.751, 1.749, 1.752, 1.75, 1.752, 1.75],
    ];
    const reduced = reduceDiameterSurvey(
      observationsOf({
        position: [0, 0, 500, 500, 1000, 1000, 1500, 1500, 2000, 2000, 2500, 2500],
        firstDiameter: [...(ones ?? []), ...(others ?? [])],
        secondDiameter: [...(others ?? []), ...(ones ?? [])],
      }),
      settings,
    );
    expect(resultOf(reduced, 'ovality').interval.low).toBe(0);
    expect(reduced.ok && reduced.value.warnings.join()).toContain('Only 6 places');
    expect(reduced.ok && reduced.value.warnings.join()).not.toContain('a second time');
  });

  test('says that places read once leave noise and ovality apart only together', () => {
    const position = Array.from({ length: 10 }, (_, index) => 500 * index);
    const firstDiameter = position.map((_, index) => (index % 2 === 0 ? 1.752 : 1.748));
    const secondDiameter = position.map((_, index) => (index % 2 === 0 ? 1.748 : 1.752));
    const reduced = reduceDiameterSurvey(
      observationsOf({ position, firstDiameter, secondDiameter }),
      settings,
    );
    expect(resultOf(reduced, 'ovality').interval.low).toBe(0);
    expect(reduced.ok && reduced.value.warnings.join()).toContain('read five places a second time');
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
