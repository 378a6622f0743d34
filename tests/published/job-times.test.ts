import { describe, expect, it } from 'vitest';
import { compared, lantern, steeple } from '../decisions/compare/demo-comparison.ts';

// 8 minutes on a fast machine against 13 to 16 minutes on an ordinary one are common figures for the same small test
// part: common practice, no source.
describe('the peg of the mask rack, a test part of 14 g', () => {
  const minutes = compared({ pairings: [lantern, steeple] }).estimates.map(({ time }) => time / 60);

  it('takes about 8 minutes on the fastest machine of the demo', () => {
    expect(minutes[1]).toBeGreaterThan(7.5);
    expect(minutes[1]).toBeLessThan(8.5);
  });

  it('takes 13 to 16 minutes on its enclosed gantry machine', () => {
    expect(minutes[0]).toBeGreaterThan(13);
    expect(minutes[0]).toBeLessThan(16);
  });
});
