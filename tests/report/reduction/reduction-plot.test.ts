import { describe, expect, it } from 'vitest';
import type { Reduction } from '../../../src/bench/reduction.ts';
import type { PlotMark } from '../../../src/plots/plot.ts';
import { reductionPlot } from '../../../src/report/reduction/reduction-plot.ts';

const limit = {
  quantity: 'meltFlow',
  dimension: 'volumeFlow',
  value: 38.46,
  interval: { low: 38, high: 38.9, coverage: 0.95 },
  censored: null,
} as const;

const ladder = {
  method: 'flowLadder',
  results: [limit],
  curve: {
    x: { quantity: 'commandedFlow', dimension: 'volumeFlow' },
    y: { quantity: 'deficit', dimension: 'ratio' },
    readings: [
      { x: 20, y: 0 },
      { x: 42, y: 0.11 },
    ],
    fit: [
      { x: 20, y: 0.001 },
      { x: 42, y: 0.1 },
    ],
    band: [
      { x: 20, low: -0.01, high: 0.01 },
      { x: 42, low: 0.09, high: 0.12 },
    ],
    threshold: 0.05,
    limits: [{ value: 38.46, low: 38, high: 38.9 }],
  },
  warnings: [],
} as const satisfies Reduction;

function plotOf(reduction: Reduction, events: Parameters<typeof reductionPlot>[2] = []) {
  const plot = reductionPlot(reduction, 'a-trial', events);
  if (plot === null) throw new Error('there is a curve');
  return plot;
}

function mark<Kind extends PlotMark['kind']>(marks: readonly PlotMark[], kind: Kind) {
  return marks.find((one): one is Extract<PlotMark, { kind: Kind }> => one.kind === kind);
}

describe('the plot of a reduction', () => {
  it('names the axes with the units that people use', () => {
    const { x, y } = plotOf(ladder);
    expect([x, y]).toEqual([
      { quantity: 'commanded flow', unit: 'mm³/s' },
      { quantity: 'deficit', unit: '%' },
    ]);
  });

  it('shows readings, fit and band in those units', () => {
    const { marks } = plotOf(ladder);
    expect(mark(marks, 'points')?.points).toEqual([
      { x: 20, y: 0 },
      { x: 42, y: 11 },
    ]);
    expect(mark(marks, 'line')?.points[1]).toEqual({ x: 42, y: 10 });
    expect(mark(marks, 'band')?.points[1]).toEqual({ x: 42, low: 9, high: 12 });
  });

  it('shows the limit with its interval where it crosses the accepted level', () => {
    const { marks } = plotOf(ladder);
    expect(mark(marks, 'level')).toMatchObject({ axis: 'y', at: 5, label: 'accepted deficit 5 %' });
    expect(mark(marks, 'intervals')).toEqual({
      kind: 'intervals',
      along: 'x',
      label: 'melt flow 38.5 mm³/s, 95 % interval 38.0 to 38.9 mm³/s',
      points: [{ x: 38.46, y: 5, low: 38, high: 38.9 }],
    });
  });

  it('shows a lower bound as an arrow to higher flows', () => {
    const bound = {
      ...limit,
      value: 42,
      interval: { low: null, high: null, coverage: 0.95 },
      censored: 'above',
    } as const;
    const { marks } = plotOf({ ...ladder, results: [bound] });
    expect(mark(marks, 'intervals')).toBeUndefined();
    expect(mark(marks, 'bounds')).toMatchObject({ towards: 'right', label: 'melt flow at least 42 mm³/s' });
  });

  it('shows what ended the run', () => {
    const { marks } = plotOf(ladder, [
      { event: 'halted', commandedFlow: 44 },
      { event: 'stripped', commandedFlow: 43 },
    ]);
    const labels = marks.flatMap((one) => (one.kind === 'level' && one.axis === 'x' ? [one.label] : []));
    expect(labels).toEqual(['halted at 44 mm³/s', 'drive stripped the filament at 43 mm³/s']);
  });

  it('says in words what it shows', () => {
    expect(plotOf(ladder, [{ event: 'halted', commandedFlow: 44 }]).description).toBe(
      '2 readings of deficit from 0 % to 11 %, against commanded flow from 20 mm³/s to 42 mm³/s. ' +
        'Accepted deficit 5 %. Melt flow 38.5 mm³/s, 95 % interval 38.0 to 38.9 mm³/s. Halted at 44 mm³/s.',
    );
  });

  it('shows hours in hours and metres in metres', () => {
    const drying = {
      ...ladder,
      method: 'dryingCurve',
      results: [
        {
          ...limit,
          quantity: 'dryingTime',
          dimension: 'time',
          value: 18540,
          interval: { low: 18396, high: 18648, coverage: 0.95 },
        },
      ],
      curve: {
        ...ladder.curve,
        x: { quantity: 'elapsedTime', dimension: 'time' },
        y: { quantity: 'mass', dimension: 'mass' },
        readings: [
          { x: 0, y: 932 },
          { x: 57600, y: 926.1 },
        ],
        threshold: 926.853,
      },
    } as const;
    const { x, marks } = plotOf(drying);
    expect(x.unit).toBe('h');
    expect(mark(marks, 'points')?.points[1]?.x).toBe(16);
    expect(mark(marks, 'intervals')?.label).toBe('drying time 5.15 h, 95 % interval 5.11 to 5.18 h');
    // Digits by what the figure spans, not by the size of the number.
    expect(mark(marks, 'level')?.label).toBe('accepted mass 926.85 g');
  });

  it('shows the limit of its own curve where there are several', () => {
    const speed = { ...limit, quantity: 'contourSpeed', dimension: 'speed' } as const;
    const contour = {
      ...ladder,
      method: 'contourLadder',
      results: [
        { ...speed, at: { acceleration: 3000 } },
        { ...speed, at: { acceleration: 8000 } },
      ],
      curve: { ...ladder.curve, x: { quantity: 'contourSpeed', dimension: 'speed' } },
    } as const;
    const shown = plotOf(contour).marks.filter(({ kind }) => kind === 'intervals');
    expect(shown).toMatchObject([
      { label: 'contour speed at 3000 mm/s² 38.5 mm/s, 95 % interval 38.0 to 38.9 mm/s' },
    ]);
  });
});
