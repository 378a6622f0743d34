import { describe, expect, it } from 'vitest';
import { drawPlot } from '../../src/plots/draw-plot.ts';
import type { Plot } from '../../src/plots/plot.ts';
import { samplePlot } from './sample-plot.ts';

/** Names of the elements that are open when the text ends, or that close another than the one which is open. */
function unbalanced(xml: string): string[] {
  const open: string[] = [];
  for (const [, closing, name = '', selfClosing] of xml.matchAll(/<(\/?)([\w-]+)(?:\s[^<>]*?)?(\/?)>/g)) {
    if (closing === '/' && open.at(-1) !== name) return [...open, name];
    if (closing === '/') open.pop();
    else if (selfClosing !== '/') open.push(name);
  }
  return open;
}

const empty: Plot = { ...samplePlot, marks: [] };

describe('a drawn plot', () => {
  it('is the picture that was looked at', async () => {
    await expect(drawPlot(samplePlot)).toMatchFileSnapshot('../goldens/sample-plot.svg');
  });

  it('is the same bytes each time', () => {
    expect(drawPlot(samplePlot)).toBe(drawPlot(structuredClone(samplePlot)));
  });

  it('has balanced elements', () => {
    expect(unbalanced(drawPlot(samplePlot))).toEqual([]);
  });

  it('names its quantities with their units', () => {
    expect(drawPlot(samplePlot)).toContain('>commanded flow (mm³/s)</text>');
    expect(drawPlot(samplePlot)).toContain('>deficit (%)</text>');
  });

  it('is announced by its title and description', () => {
    const svg = drawPlot(samplePlot);
    expect(svg).toMatch(
      /role="img" aria-labelledby="plot-deficit-against-flow-title plot-deficit-against-flow-desc"/,
    );
    expect(svg).toContain('<title id="plot-deficit-against-flow-title">Deficit against flow</title>');
    expect(svg).toContain('<desc id="plot-deficit-against-flow-desc">Readings rise');
  });

  it('is black, white and grey', () => {
    const colours = new Set(drawPlot(samplePlot).match(/#[0-9a-f]{3,6}\b/g));
    expect([...colours].sort()).toEqual(['#000', '#ddd', '#fff']);
  });

  it('asks for nothing from elsewhere', () => {
    expect(drawPlot(samplePlot)).not.toMatch(/<(?:script|image|style|use|link)|href|url\(/);
  });

  it('shows hostile text as text', () => {
    const hostile = '<script>alert("1")</script>&\u001b[2J';
    const svg = drawPlot({
      ...samplePlot,
      title: hostile,
      description: hostile,
      x: { quantity: hostile, unit: hostile },
      marks: [
        { kind: 'level', axis: 'x', at: 1, label: hostile },
        { kind: 'points', label: hostile, points: [{ x: 0, y: 0 }] },
        { kind: 'note', at: { x: 0, y: 0 }, text: hostile },
      ],
    });
    expect(svg).not.toContain('<script');
    expect(svg).not.toContain('\u001b');
    expect(unbalanced(svg)).toEqual([]);
  });

  it('leaves out points that have no place', () => {
    const points = [
      { x: 1, y: 1 },
      { x: Number.NaN, y: 2 },
      { x: 2, y: Number.POSITIVE_INFINITY },
    ];
    const svg = drawPlot({
      ...empty,
      marks: [
        { kind: 'points', points },
        { kind: 'line', points },
      ],
    });
    expect(svg).not.toMatch(/NaN|Infinity/);
  });

  it('has axes even without marks', () => {
    expect(drawPlot(empty)).toMatch(/>0\.5<\/text>/);
  });

  it('writes a lower bound as an arrow in its direction', () => {
    const towards = (direction: 'up' | 'left') =>
      drawPlot({ ...empty, marks: [{ kind: 'bounds', towards: direction, points: [{ x: 1, y: 1 }] }] });
    expect(towards('up')).toContain('rotate(270)');
    expect(towards('left')).toContain('rotate(180)');
  });
});
