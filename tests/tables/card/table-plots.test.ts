import { describe, expect, it } from 'vitest';
import type { Plot, PlotMark, PlotPoint } from '../../../src/plots/plot.ts';
import { meltLimitPlot } from '../../../src/tables/card/plot-melt-limit.ts';
import { reachableSpeedPlot } from '../../../src/tables/card/plot-reachable-speed.ts';
import { speedByHeightPlot } from '../../../src/tables/card/plot-speed-by-height.ts';
import { meltLimit, policyOf, registryWith, tableWith } from '../derive/pairing-with.ts';

const table = tableWith();

function marksOf<Kind extends PlotMark['kind']>(plot: Plot | null, kind: Kind) {
  return (plot?.marks ?? []).filter((mark): mark is Extract<PlotMark, { kind: Kind }> => mark.kind === kind);
}

/** Where a drawn line stands at `x`. */
function heightOfLine(points: readonly PlotPoint[], x: number): number {
  const after = points.findIndex((point) => point.x >= x - 1e-12);
  const [from, to] = [points[Math.max(0, after - 1)]!, points[after]!];
  return to.x === from.x ? to.y : from.y + ((x - from.x) / (to.x - from.x)) * (to.y - from.y);
}

describe('speed against layer height', () => {
  const plot = speedByHeightPlot(table);

  it('has a point for every printed feature and layer height, at the narrowest line', () => {
    const width = Math.min(...table.rows.map(({ lineWidth }) => lineWidth));
    const rows = table.rows.filter((row) => row.lineWidth === width && row.feature !== 'travel');
    const points = marksOf(plot, 'points').flatMap((mark) => mark.points);
    expect(points).toHaveLength(rows.length);
    for (const { layerHeight, speed } of rows) expect(points).toContainEqual({ x: layerHeight, y: speed });
  });

  it('has one shape a bound', () => {
    const shapes = marksOf(plot, 'points').map(({ label, marker }) => [label, marker]);
    const bounds = new Set(
      table.rows.filter(({ feature }) => feature !== 'travel').map(({ bound }) => `limited by ${bound}`),
    );
    for (const [label] of shapes) expect(bounds).toContain(label);
    expect(new Set(shapes.map(([, marker]) => marker)).size).toBe(shapes.length);
  });

  it('names every line where it ends', () => {
    expect(
      marksOf(plot, 'note')
        .map(({ text }) => text)
        .sort(),
    ).toEqual([
      'bridge',
      'first layer',
      'infill',
      'inner contour',
      'outer contour',
      'overhang',
      'top surface',
    ]);
  });

  it('draws no line above what the bounds allow, at 200 layer heights', { tags: 'long' }, () => {
    const [low, high] = [0.15, 0.48];
    const heights = Array.from({ length: 200 }, (_, index) => low + ((high - low) * (index + 0.37)) / 200);
    const shares = (millimetres: readonly number[]) => millimetres.map((height) => height / 0.6);
    const drawn = speedByHeightPlot(tableWith({ policy: { layerHeights: shares([low, 0.3, high]) } }));
    const fine = tableWith({ policy: { layerHeights: shares([low, ...heights, high]) } });
    // A hundredth of a px on an axis of 340 px, to which paths are written.
    const digit = (drawn!.y.range![1] / 340) * 0.01;
    const lines = marksOf(drawn, 'line').filter(({ style }) => style === undefined);
    const names = [...new Set(fine.rows.map(({ feature }) => feature))].filter((name) => name !== 'travel');
    expect(lines).toHaveLength(names.length);
    for (const [index, feature] of names.entries()) {
      const width = Math.min(...fine.rows.map(({ lineWidth }) => lineWidth));
      const rows = fine.rows.filter((row) => row.feature === feature && row.lineWidth === width);
      expect(rows).toHaveLength(202);
      for (const { layerHeight, bounds } of rows) {
        const allowed = Math.min(...bounds.map((bound) => bound.allowed));
        const y = heightOfLine(lines[index]!.points, layerHeight);
        expect(y - allowed).toBeLessThanOrEqual(digit);
        expect(allowed - y).toBeLessThanOrEqual(0.01 * allowed);
      }
    }
  });

  it('is left out where there is one layer height only', () => {
    expect(speedByHeightPlot(tableWith({ policy: { layerHeights: [0.5] } }))).toBeNull();
  });
});

describe('melt flow limit against nozzle temperature', () => {
  const interval = { low: 24, high: 28 };
  const limits = (...temperatures: number[]) =>
    tableWith({
      filament: {
        meltFlow: temperatures.map((temperature, index) => ({
          ...meltLimit(26 + index, temperature),
          interval: { low: interval.low + index, high: interval.high + index },
        })),
      },
    });

  it('has a line with its band between two tested temperatures, and nothing beyond', () => {
    const plot = meltLimitPlot(limits(215, 230));
    const [line] = marksOf(plot, 'line');
    const [band] = marksOf(plot, 'band');
    expect(line?.points.map(({ x }) => x)).toSatisfy(
      (xs: number[]) => Math.min(...xs) === 215 && Math.max(...xs) === 230,
    );
    expect(band?.points[0]).toMatchObject({ x: 215 });
    expect(band!.points[0]!.low).toBeLessThan(line!.points[0]!.y);
    expect(band!.points[0]!.high).toBeGreaterThan(line!.points[0]!.y);
  });

  it('has no line for one temperature', () => {
    const plot = meltLimitPlot(limits(230));
    expect([marksOf(plot, 'line'), marksOf(plot, 'band')]).toEqual([[], []]);
    expect(marksOf(plot, 'intervals')[0]?.points).toEqual([{ x: 230, y: 26, ...interval }]);
  });

  it('shows a limit without an interval as a point', () => {
    const plot = meltLimitPlot(tableWith({ filament: { meltFlow: [meltLimit(26, 230)] } }));
    expect(marksOf(plot, 'points')[0]?.points).toEqual([{ x: 230, y: 26 }]);
  });

  it('shows the largest flow of the table', () => {
    const largest = Math.max(...table.rows.map(({ flow }) => flow));
    expect(marksOf(meltLimitPlot(table), 'level').map(({ at }) => at)).toEqual([largest]);
  });
});

describe('reachable speed against segment length', () => {
  it('has the typical segment of every feature, named at its mark', () => {
    const plot = reachableSpeedPlot(table);
    const names = marksOf(plot, 'note').filter(({ namesMark }) => namesMark);
    const { typicalSegments } = policyOf(registryWith({}));
    const named = names.flatMap(({ at, text }) => text.split(', ').map((feature) => ({ feature, at })));
    expect(named).toHaveLength(8);
    for (const { feature, at } of named) {
      const key = feature.replace(/ (.)/, (_, letter: string) => letter.toUpperCase());
      expect(at.x).toBe(typicalSegments[key as keyof typeof typicalSegments]);
      expect(marksOf(plot, 'points').flatMap(({ points }) => points)).toContainEqual(at);
    }
  });

  it('puts each feature on the curve of its own acceleration', () => {
    for (const row of table.rows) {
      const segment = policyOf(registryWith({})).typicalSegments[row.feature];
      const peak = Math.sqrt(row.acceleration * segment);
      const places = marksOf(reachableSpeedPlot(table), 'points').flatMap((mark) => mark.points);
      expect(places.some(({ x, y }) => x === segment && Math.abs(y - peak) < 1e-9)).toBe(true);
    }
  });

  it('shows the top speed of the machine, where it is known', () => {
    expect(marksOf(reachableSpeedPlot(table), 'level')).toHaveLength(1);
    expect(marksOf(reachableSpeedPlot(tableWith({ machine: { topSpeed: [] } })), 'level')).toEqual([]);
  });
});
