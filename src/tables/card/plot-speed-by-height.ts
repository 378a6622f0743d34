import type { Marker, Plot, PlotMark, PlotPoint } from '../../plots/plot.ts';
import { sampleCurve } from '../../plots/sample-curve.ts';
import { wordsOf } from '../../text/words.ts';
import type { BoundName, SpeedRow, SpeedTable } from '../derive/speed-table.ts';
import { speedAtHeight } from './speed-at-height.ts';
import { spreadLabels } from './spread-labels.ts';

/** One shape a bound, told apart without colour. */
const markers: Readonly<Record<BoundName, Marker>> = {
  melt: 'dot',
  traction: 'openSquare',
  motion: 'openTriangle',
  cooling: 'openDiamond',
  machine: 'square',
  quality: 'cross',
  policy: 'diamond',
};

/** Height of a label, and how far its middle stands above its place, as shares of the height of the axis. */
const labelShare = 1 / 16;
const aboveShare = 1 / 24;
/** How far a drawn line may be off its curve, as a share of the height of the axis: below a hundredth of a px. */
const lineTolerance = 1 / 50_000;

/**
 * Speed against layer height at the narrowest line, the curve that the bounds give for each printed feature, its name at
 * the end; a row is a point upon it, whose shape is the bound that holds the speed. Travel moves do not depend on the layer. Null where there is one layer height.
 */
export function speedByHeightPlot({ rows }: SpeedTable): Plot | null {
  const width = Math.min(...rows.map(({ lineWidth }) => lineWidth));
  const shown = rows.filter(({ lineWidth, feature }) => lineWidth === width && feature !== 'travel');
  const heights = shown.map(({ layerHeight }) => layerHeight);
  const [low, high] = [Math.min(...heights), Math.max(...heights)];
  if (!(high > low)) return null;
  const top = 1.06 * Math.max(...shown.map(({ speed }) => speed));
  const span = high - low;
  const right = high + 0.36 * span;
  return {
    title: `Speed against layer height, line ${width} mm wide`,
    description: `${describedLines(shown)} The shape of a point says what limits the speed there.`,
    x: { quantity: 'layer height', unit: 'mm', range: [low - 0.06 * span, right] },
    y: { quantity: 'speed', unit: 'mm/s', range: [0, top] },
    marks: [...linesByFeature(shown, [low, high], top), ...boundPoints(shown)],
  };
}

function linesByFeature(
  rows: readonly SpeedRow[],
  [start, end]: readonly [number, number],
  top: number,
): PlotMark[] {
  const lead = 0.035 * (end - start);
  const lines = [...new Set(rows.map(({ feature }) => feature))].map((feature) => {
    const own = rows.filter((row) => row.feature === feature);
    const curve = (height: number) => speedAtHeight(own, height);
    return { feature, points: sampleCurve(curve, [start, end], lineTolerance * top) };
  });
  const ends = lines.map(({ points }) => points.at(-1)?.y ?? 0);
  const places = spreadLabels(ends, labelShare * top, [top / 36, top]);
  return lines.flatMap(({ feature, points }, index): PlotMark[] => {
    const y = places[index] ?? 0;
    const leader = [
      { x: end, y: ends[index] ?? 0 },
      { x: end + lead, y },
    ];
    return [
      { kind: 'line', points },
      { kind: 'line', points: leader, style: 'dotted' },
      { kind: 'note', at: { x: end + lead, y: y - aboveShare * top }, text: wordsOf(feature) },
    ];
  });
}

function boundPoints(rows: readonly SpeedRow[]): PlotMark[] {
  const names: readonly BoundName[] = [
    'melt',
    'traction',
    'motion',
    'cooling',
    'machine',
    'quality',
    'policy',
  ];
  return names.flatMap((name): PlotMark[] => {
    const points = rows.filter(({ bound }) => bound === name).map(pointOf);
    return points.length === 0
      ? []
      : [{ kind: 'points', label: `limited by ${name}`, marker: markers[name], points }];
  });
}

function pointOf({ layerHeight, speed }: SpeedRow): PlotPoint {
  return { x: layerHeight, y: speed };
}

function describedLines(rows: readonly SpeedRow[]): string {
  const features = [...new Set(rows.map(({ feature }) => feature))];
  const sentences = features.map((feature) => {
    const steps = rows
      .filter((row) => row.feature === feature)
      .map(({ layerHeight, speed, bound }) => `${speed} mm/s at ${layerHeight} mm (${bound})`);
    return `${wordsOf(feature)}: ${steps.join(', ')}`;
  });
  return `${sentences.join('; ')}.`;
}
