import { expect, test } from 'vitest';
import { formatPlotAsCsv } from '../../src/plots/plot-as-csv.ts';

test('the numbers of a plot are its points, bands, intervals and levels, with the names of the axes', () => {
  const csv = formatPlotAsCsv({
    title: 'Deficit against flow',
    description: '',
    x: { quantity: 'flow', unit: 'mm³/s' },
    y: { quantity: 'deficit', unit: '%' },
    marks: [
      { kind: 'band', label: 'band', points: [{ x: 1, low: 2, high: 3 }] },
      { kind: 'points', label: 'readings', points: [{ x: 10, y: 0.5 }] },
      { kind: 'level', axis: 'y', at: 5, label: 'accepted' },
      { kind: 'level', axis: 'x', at: 40, label: 'halted' },
      { kind: 'intervals', along: 'x', points: [{ x: 38, y: 5, low: 37, high: 39 }] },
      { kind: 'note', at: { x: 1, y: 1 }, text: 'a note is no number' },
    ],
  });
  expect(csv.split('\r\n')).toEqual([
    'mark,name,flow (mm³/s),deficit (%),low,high',
    'band,band,1,,2,3',
    'points,readings,10,0.5,,',
    'level,accepted,,5,,',
    'level,halted,40,,,',
    'intervals,,38,5,37,39',
    '',
  ]);
});
