import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Plot } from '../../src/plots/plot.ts';
import { plotScale } from '../../src/plots/plot-scale.ts';

function plotOf(...xs: number[]): Plot {
  return {
    title: '',
    description: '',
    x: { quantity: 'x', unit: '' },
    y: { quantity: 'y', unit: '' },
    marks: [{ kind: 'points', points: xs.map((x) => ({ x, y: 0 })) }],
  };
}

describe('the scale of an axis', () => {
  it('writes round numbers with as many decimals as their step needs', () => {
    expect(plotScale(plotOf(0, 0.1), 'x', 5).ticks.map(({ text }) => text)).toEqual([
      ...['0.00', '0.02', '0.04', '0.06', '0.08', '0.10'],
    ]);
  });

  it('leaves a little space around what it shows', () => {
    const { low, high } = plotScale(plotOf(100, 200), 'x', 5);
    expect([low, high]).toEqual([96, 204]);
  });

  it('keeps to a range that is given', () => {
    const plot = plotOf(100, 200);
    expect(plotScale({ ...plot, x: { ...plot.x, range: [0, 50] } }, 'x', 5)).toMatchObject({
      low: 0,
      high: 50,
    });
  });

  it('gives a single number a width', () => {
    const { low, high } = plotScale(plotOf(230), 'x', 5);
    expect(low).toBeLessThan(230);
    expect(high).toBeGreaterThan(230);
  });

  it('shows every number between its ends, in the order of the numbers', () => {
    const number = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(fc.array(number, { minLength: 1, maxLength: 20 }), (numbers) => {
        const { share } = plotScale(plotOf(...numbers), 'x', 6);
        const sorted = numbers.toSorted((one, other) => one - other).map(share);
        expect(sorted.every((at) => at >= 0 && at <= 1)).toBe(true);
        expect(sorted).toEqual(sorted.toSorted((one, other) => one - other));
      }),
    );
  });
});
