import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  apportioned,
  durationText,
  featureTexts,
  limiterTexts,
  savingText,
} from '../../../src/decisions/compare/format-duration.ts';
import { compared, lantern, skiff, steeple } from './demo-comparison.ts';

const { estimates } = compared({ pairings: [lantern, steeple, skiff] });
/** Tenths of a minute in `13.1 min`. */
const tenths = (text: string) => Math.round(10 * Number(/^(-?[\d.]+) min/.exec(text)![1]));
const sum = (numbers: readonly number[]) => numbers.reduce((before, number) => before + number, 0);

describe.each(estimates)('the times that are shown of $machine', (estimate) => {
  const shown = tenths(durationText(estimate.time));

  it('add up over what limits them, and so do the shares', () => {
    const texts = [...limiterTexts(estimate).values()];
    expect(sum(texts.map(({ time }) => tenths(time)))).toBe(shown);
    expect(sum(texts.map(({ share }) => Number.parseInt(share, 10)))).toBe(100);
  });

  it('add up over the features and what lies between the layers', () => {
    const { features, betweenLayers } = featureTexts(estimate);
    expect(sum([...features.values(), betweenLayers].map(tenths))).toBe(shown);
  });

  it('differ from those of the first by what is shown as saved', () => {
    expect(tenths(savingText(estimates[0]!, estimate))).toBe(
      tenths(durationText(estimates[0]!.time)) - shown,
    );
  });
});

describe('parts', () => {
  it('move by less than a step each, and add up to the rounded sum', () => {
    const parts = fc.array(fc.double({ min: 0, max: 1e5, noNaN: true }), { minLength: 1, maxLength: 9 });
    fc.assert(
      fc.property(parts, fc.constantFrom(6, 60), (exact, step) => {
        const shown = apportioned(exact, step);
        expect(sum(shown) / step).toBeCloseTo(Math.round(sum(exact) / step), 6);
        for (const [index, part] of exact.entries()) {
          expect(Math.abs(shown[index]! - part)).toBeLessThanOrEqual(step * (1 + 1e-6));
        }
      }),
    );
  });
});

describe('durations', () => {
  it.each([
    [0, '0.0 min'],
    [785, '13.1 min'],
    [-285, '-4.8 min'],
    [7196, '119.9 min'],
    [7200, '2 h 0 min'],
    [-8100, '-2 h 15 min'],
  ])('%d s is %s', (time, text) => {
    expect(durationText(time)).toBe(text);
  });

  it('are whole minutes where they are parts of hours', () => {
    expect(durationText(1500, 60)).toBe('25 min');
  });
});
