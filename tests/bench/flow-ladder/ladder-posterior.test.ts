import { describe, expect, test } from 'vitest';
import { ladderLikelihood } from '../../../scripts/reference/ladder-likelihood.ts';
import { type ReferenceLadder, referenceLadders } from '../../../scripts/reference/ladders.ts';
import { refereedQuantiles } from '../../../scripts/reference/prior-referee.ts';
import type { LadderStep } from '../../../src/bench/flow-ladder/flow-ladder-steps.ts';
import { LadderLikelihood } from '../../../src/bench/flow-ladder/ladder-likelihood.ts';
import { ladderPosterior } from '../../../src/bench/flow-ladder/ladder-posterior.ts';
import { limitDistribution } from '../../../src/bench/flow-ladder/limit-distribution.ts';
import { onsetFamilies } from '../../../src/bench/flow-ladder/onset-families.ts';
import { possibleCurves } from '../../../src/bench/flow-ladder/possible-curves.ts';
import { quantile, sortedDraws } from '../../../src/statistics/coverage-interval.ts';

const ladders = referenceLadders();
const probabilities = [0.005, 0.025, 0.25, 0.5, 0.75, 0.975, 0.995];

function quantiles({ bench, tolerance }: ReferenceLadder): number[] {
  const first = bench.steps[0]!.flow;
  return probabilities.map(limitDistribution(ladderPosterior(bench, tolerance), first));
}

function ladder(id: string): ReferenceLadder {
  const found = ladders.find((each) => each.id === id);
  if (found === undefined) throw new Error(`no ladder ${id}`);
  return found;
}

function withSteps({ bench, ...rest }: ReferenceLadder, change: (step: LadderStep) => Partial<LadderStep>) {
  return { ...rest, bench: { ...bench, steps: bench.steps.map((step) => ({ ...step, ...change(step) })) } };
}

describe('the likelihood', () => {
  test('is that of the reference, summed over repeatabilities', () => {
    const { bench, tolerance } = ladder('ladder-003');
    const likelihood = new LadderLikelihood(bench);
    // A curve that explains the ladder: elsewhere repeatabilities matter that the nodes leave out.
    const [limit] = quantiles(ladder('ladder-003')).slice(3);
    const shapes = [-1, 0, 1, 2].flatMap((power) => [-2, 0, 2].map((share) => [power, share] as const));
    const fits = shapes.map(([power, share]) => {
      const onset = onsetFamilies[1]!.onsets([power], tolerance)(share)!;
      return { onset, fit: likelihood.fit(onset, Math.log(limit!)) };
    });
    const { onset, fit } = fits.reduce((best, each) =>
      each.fit.logLikelihood > best.fit.logLikelihood ? each : best,
    );
    const curve = (flow: number) => 1 - onset.delivered(flow / limit!, Math.log(flow / limit!));
    const step = 0.02;
    let sum = 0;
    for (let deviate = -5; deviate < 5; deviate += step) {
      const { logLikelihood } = ladderLikelihood(bench, curve, limit!, Math.log(0.005) + 0.7 * deviate);
      const relative = Math.exp(logLikelihood - fit.logLikelihood - 0.5 * deviate ** 2);
      sum += (step * relative) / Math.sqrt(2 * Math.PI);
    }
    expect(sum).toBeCloseTo(1, 1);
  });
});

describe('the limit', () => {
  test.each(['ladder-003', 'lantern-stagecraft-pla-230', 'ladder-007'])(
    'of %s is where draws from the prior have it',
    { tags: 'long', timeout: 30_000 },
    (id) => {
      const { bench, tolerance } = ladder(id);
      const [far = 0, low = 0, , median = 0, , high = 0, farther = 0] = quantiles(ladder(id));
      const range = { low: far - 0.6 * (farther - far), high: farther + 0.6 * (farther - far) };
      const refereed = refereedQuantiles(bench, tolerance, range, 150_000, [0.025, 0.5, 0.975]);
      for (const [index, value] of [low, median, high].entries()) {
        const { value: expected, standardError } = refereed[index]!;
        expect(Math.abs(value - expected)).toBeLessThan(0.03 * (high - low) + 4 * standardError);
      }
    },
  );

  test.each(ladders.map(({ id }) => id))('of %s has quantiles that rise, about the tested flows', (id) => {
    const { bench } = ladder(id);
    const found = quantiles(ladder(id));
    expect(found).toEqual(found.toSorted((one, other) => one - other));
    expect(new Set(found).size).toBe(probabilities.length);
    expect(found[0]).toBeGreaterThan(0.4 * bench.steps[0]!.flow);
    expect(found.at(-1)).toBeLessThan(2 * bench.steps.at(-1)!.flow);
  });

  const some = ['ladder-001', 'ladder-010', 'hearth-truss-pa6-cf15-275', 'censored-031'].map(ladder);
  const close = (one: readonly number[], other: readonly number[], factor = 1) => {
    const width = one.at(-2)! - one[1]!;
    for (const [index, value] of one.entries()) {
      expect(Math.abs(other[index]! / factor - value)).toBeLessThan(1e-6 * width);
    }
  };

  test('follows the unit of the flows', () => {
    for (const each of some) {
      const scaled = withSteps(each, ({ flow }) => ({ flow: 3.7 * flow }));
      close(quantiles(each), quantiles(scaled), 3.7);
    }
  });

  test('does not ask how much came out, but how much less', () => {
    for (const each of some) {
      const shifted = withSteps(each, ({ meanLogRatio }) => ({ meanLogRatio: meanLogRatio + 0.07 }));
      close(quantiles(each), quantiles(shifted));
    }
  });

  test('has a wider interval when the scale or the feed is worse', () => {
    const width = (each: ReferenceLadder) => {
      const found = quantiles(each);
      return found.at(-2)! - found[1]!;
    };
    for (const each of some.slice(0, 2)) {
      const coarse = withSteps(each, ({ relativeResolution }) => ({
        relativeResolution: 20 * relativeResolution,
      }));
      expect(width(coarse)).toBeGreaterThan(width(each));
      const uncertain = { ...each, bench: { ...each.bench, feedLengthUncertainty: 0.02 } };
      expect(width(uncertain)).toBeGreaterThan(width(each));
    }
  });
});

describe('possible curves', () => {
  const { bench, tolerance } = ladder('ladder-003');
  const first = bench.steps[0]!.flow;
  const posterior = ladderPosterior(bench, tolerance);
  const curves = possibleCurves(posterior, first);

  test('stand for equal shares', () => {
    expect(curves.length).toBeGreaterThan(195);
    expect(curves.length).toBeLessThanOrEqual(200);
  });

  test('cross the accepted deficit where the limit is', () => {
    const limitAt = limitDistribution(posterior, first);
    const width = limitAt(0.975) - limitAt(0.025);
    const crossings = sortedDraws(
      curves.map(({ deficit }) => crossing((flow) => deficit(flow, Math.log(flow)))),
    );
    for (const probability of [0.1, 0.5, 0.9]) {
      expect(Math.abs(quantile(crossings, probability) - limitAt(probability))).toBeLessThan(0.06 * width);
    }
  });

  /** By bisection. */
  function crossing(deficit: (flow: number) => number): number {
    let [low, high] = [first, 2 * bench.steps.at(-1)!.flow];
    for (let step = 0; step < 40; step++) {
      const middle = (low + high) / 2;
      if (deficit(middle) < tolerance) low = middle;
      else high = middle;
    }
    return low;
  }
});
