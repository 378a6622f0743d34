import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spreadLabels } from '../../../src/tables/card/spread-labels.ts';

describe('labels', () => {
  it('stay at their values where there is room', () => {
    expect(spreadLabels([10, 50, 30], 5, [0, 100])).toEqual([10, 50, 30]);
  });

  it('move up from each other, the lowest value lowest', () => {
    expect(spreadLabels([12, 10, 11], 5, [0, 100])).toEqual([20, 10, 15]);
  });

  it('move down from the upper end', () => {
    expect(spreadLabels([99, 98], 5, [0, 100])).toEqual([100, 95]);
  });

  it('keep their gap and their order whatever the values, as long as there is room', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { maxLength: 10 }), (values) => {
        const places = spreadLabels(values, 10, [0, 100]);
        const order = values.map((_, index) => index).sort((a, b) => places[a]! - places[b]!);
        for (const [rank, index] of order.entries()) {
          const below = order[rank - 1];
          expect(places[index]).toBeGreaterThanOrEqual(-1e-9);
          expect(places[index]).toBeLessThanOrEqual(100);
          if (below === undefined) continue;
          expect(places[index]! - places[below]!).toBeGreaterThanOrEqual(10 - 1e-9);
          expect(values[index]).toBeGreaterThanOrEqual(values[below]!);
        }
      }),
    );
  });
});
