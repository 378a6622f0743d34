import { describe, expect, it } from 'vitest';
import type { SpeedTable } from '../../../src/tables/derive/speed-table.ts';
import { tableWith } from './pairing-with.ts';

const stated = (value: number, at: { layerHeight?: number; acceleration?: number }) =>
  ({
    value,
    basis: 'measured',
    evidence: 'wren-daisy-pla-215',
    at: { machine: 'plumstead/wren', ...at },
  }) as const;

function qualityOf({ rows }: SpeedTable, layerHeight: number): number | undefined {
  const row = rows.find((each) => each.feature === 'outerContour' && each.layerHeight === layerHeight);
  return row?.bounds.find(({ name }) => name === 'quality')?.speed;
}

// The outer contour of the sample pairing is accelerated at 5000 mm/s2.
describe('the contour speed that counts', () => {
  it('is that of the layer height where it is known, else the general one', () => {
    const table = tableWith({
      filament: { contourSpeed: [stated(90, {}), stated(120, { layerHeight: 0.3 })] },
    });
    expect([0.15, 0.3, 0.42].map((height) => qualityOf(table, height))).toEqual([90, 120, 90]);
  });

  it('may have been found at a higher acceleration, which shakes more', () => {
    const table = tableWith({
      filament: { contourSpeed: [stated(140, { acceleration: 3000 }), stated(100, { acceleration: 8000 })] },
    });
    expect(qualityOf(table, 0.3)).toBe(100);
    expect(table.rows.flatMap(({ flags }) => flags)).not.toContain('untested');
  });

  it('is the lowest where none was found at such an acceleration, and the rows say so', () => {
    const table = tableWith({
      filament: { contourSpeed: [stated(140, { acceleration: 3000 }), stated(130, { acceleration: 4000 })] },
    });
    expect(qualityOf(table, 0.3)).toBe(130);
    for (const { feature, flags } of table.rows) {
      expect([feature, flags.includes('untested')]).toEqual([feature, feature === 'outerContour']);
    }
  });

  it('is the lowest of several that were measured under the same conditions, and a warning says so', () => {
    const table = tableWith({
      filament: { contourSpeed: [stated(120, {}), stated(95, {}), stated(110, {})] },
    });
    expect(qualityOf(table, 0.3)).toBe(95);
    expect(table.warnings).toContain(
      '3 contour speeds were measured under the same conditions: the lowest counts.',
    );
  });

  it('is unknown where nobody states one, and a warning says so', () => {
    const table = tableWith({ machine: { contourSpeed: [] } });
    expect(qualityOf(table, 0.3)).toBeUndefined();
    expect(table.warnings).toEqual(['No contour speed is known: surface quality does not bound.']);
  });
});
