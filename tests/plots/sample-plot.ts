import type { Plot } from '../../src/plots/plot.ts';

/** One mark of every kind. */
export const samplePlot: Plot = {
  title: 'Deficit against flow',
  description: 'Readings rise from 0 to 12 % between 20 and 50 mm³/s.',
  x: { quantity: 'commanded flow', unit: 'mm³/s' },
  y: { quantity: 'deficit', unit: '%' },
  marks: [
    {
      kind: 'band',
      label: 'band',
      points: [
        { x: 20, low: -2, high: 2 },
        { x: 50, low: 8, high: 14 },
      ],
    },
    {
      kind: 'line',
      label: 'fit',
      points: [
        { x: 20, y: 0 },
        { x: 50, y: 11 },
      ],
    },
    {
      kind: 'line',
      label: 'steps',
      style: 'dashDotted',
      step: true,
      marker: 'openSquare',
      points: [
        { x: 20, y: 0 },
        { x: 35, y: 3 },
      ],
    },
    {
      kind: 'points',
      label: 'readings',
      points: [
        { x: 20, y: 0.1 },
        { x: 35, y: 5 },
        { x: 50, y: 12 },
      ],
    },
    { kind: 'bounds', label: 'at least', towards: 'right', points: [{ x: 42, y: 2 }], marker: 'triangle' },
    { kind: 'level', axis: 'y', at: 5, label: 'accepted deficit 5 %' },
    { kind: 'level', axis: 'x', at: 48, label: 'halted', style: 'dotted' },
    {
      kind: 'intervals',
      label: 'limit',
      along: 'x',
      points: [{ x: 34, y: 5, low: 32, high: 37 }],
    },
    { kind: 'intervals', label: 'spread', along: 'y', points: [{ x: 25, y: 2, low: 1, high: 4 }] },
    { kind: 'note', at: { x: 35, y: 3 }, text: 'a step' },
  ],
};
