import { describe, expect, it } from 'vitest';
import { drawTextPlot } from '../../src/plots/draw-text-plot.ts';
import { samplePlot } from './sample-plot.ts';

describe('a text plot', () => {
  it('is the picture that was looked at', async () => {
    await expect(drawTextPlot(samplePlot)).toMatchFileSnapshot('../goldens/sample-plot.txt');
  });

  it.each([60, 72, 76])('of %i columns fits into them', (width) => {
    const lines = drawTextPlot(samplePlot, { width }).split('\n');
    expect(Math.max(...lines.map((line) => [...line].length))).toBeLessThanOrEqual(width);
  });

  it('has no control characters but the ends of its lines, whatever its texts hold', () => {
    const hostile = drawTextPlot({
      ...samplePlot,
      title: '\u001b[31mred\u202e',
      marks: [{ kind: 'level', axis: 'y', at: 1, label: '\u0007bell' }],
    });
    expect(hostile.replaceAll('\n', '')).not.toMatch(/[\p{Cc}\p{Cf}]/u);
  });

  it('names its quantities with their units', () => {
    const text = drawTextPlot(samplePlot);
    expect(text).toContain('deficit (%)');
    expect(text).toContain('commanded flow (mm³/s)');
  });

  it('puts a reading where it belongs', () => {
    const rows = drawTextPlot(
      {
        ...samplePlot,
        x: { quantity: 'x', unit: '', range: [0, 10] },
        y: { quantity: 'y', unit: '', range: [0, 10] },
        marks: [
          {
            kind: 'points',
            points: [
              { x: 0, y: 0 },
              { x: 10, y: 10 },
            ],
          },
        ],
      },
      { width: 60, height: 8 },
    ).split('\n');
    expect(rows[2]).toMatch(/^ 10┤ +o$/);
    expect(rows[9]).toMatch(/^ {2}0┤o$/);
  });
});
