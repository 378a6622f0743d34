import { area, curveLinear, curveStepAfter, line } from 'd3-shape';
import { drawMarker } from './draw-marker.ts';
import type {
  BandMark,
  BoundsMark,
  IntervalsMark,
  LevelMark,
  LineMark,
  LineStyle,
  PlotMark,
  PlotPoint,
} from './plot.ts';
import type { PlotFrame } from './plot-frame.ts';
import { svgElement } from './svg-element.ts';

/** Half of the length of the caps of an interval, px. */
const cap = 5;
/** Length of the arrow of a bound, px. */
const arrow = 26;

const dashes: Readonly<Record<LineStyle, string | undefined>> = {
  solid: undefined,
  dashed: '9 5',
  dotted: '2 4',
  dashDotted: '11 4 2 4',
};

/** The lines, areas and markers of a mark, inside of the frame; its texts are placed separately. */
export function drawMark(mark: PlotMark, frame: PlotFrame): string[] {
  switch (mark.kind) {
    case 'line':
      return drawLine(mark, frame);
    case 'band':
      return drawBand(mark, frame);
    case 'points':
      return markersAt(mark.points, mark.marker ?? 'circle', frame);
    case 'intervals':
      return drawIntervals(mark, frame);
    case 'bounds':
      return drawBounds(mark, frame);
    case 'level':
      return [drawLevel(mark, frame)];
    case 'note':
      return [];
    default:
      return mark satisfies never;
  }
}

/** Points that have a place; a number that is not finite has none. */
function placed<Point extends PlotPoint>(points: readonly Point[]): Point[] {
  return points.filter(({ x, y }) => Number.isFinite(x) && Number.isFinite(y));
}

function markersAt(
  points: readonly PlotPoint[],
  marker: Parameters<typeof drawMarker>[0],
  { x, y }: PlotFrame,
) {
  return placed(points).map((point) => drawMarker(marker, x(point.x), y(point.y)));
}

function drawLine({ points, style = 'solid', step = false, marker }: LineMark, frame: PlotFrame): string[] {
  const path = line<PlotPoint>()
    .x((point) => frame.x(point.x))
    .y((point) => frame.y(point.y))
    .curve(step ? curveStepAfter : curveLinear)
    .digits(2);
  const stroke = svgElement('path', { d: path(placed(points)) ?? '', ...strokeOf(style, 1.8) });
  return marker === undefined ? [stroke] : [stroke, ...markersAt(points, marker, frame)];
}

function drawBand({ points }: BandMark, frame: PlotFrame): string[] {
  const path = area<BandMark['points'][number]>()
    .x((point) => frame.x(point.x))
    .y0((point) => frame.y(point.low))
    .y1((point) => frame.y(point.high))
    .digits(2);
  const finite = points.filter(({ x, low, high }) => [x, low, high].every(Number.isFinite));
  return [
    svgElement('path', { d: path(finite) ?? '', fill: '#000', 'fill-opacity': '0.16', stroke: 'none' }),
  ];
}

function drawIntervals({ points, along, marker = 'diamond' }: IntervalsMark, frame: PlotFrame): string[] {
  const bars = placed(points).map((point) => {
    const [x, y] = [frame.x(point.x), frame.y(point.y)];
    const [low, high] = [frame[along](point.low), frame[along](point.high)];
    const d =
      along === 'x'
        ? `M${low},${y - cap}v${2 * cap}M${low},${y}H${high}M${high},${y - cap}v${2 * cap}`
        : `M${x - cap},${low}h${2 * cap}M${x},${low}V${high}M${x - cap},${high}h${2 * cap}`;
    return svgElement('path', { d: shortNumbers(d), ...strokeOf('solid', 1.8) });
  });
  return [...bars, ...markersAt(points, marker, frame)];
}

/** Coordinates of a path to a hundredth. */
function shortNumbers(path: string): string {
  return path.replace(/-?\d+\.\d+(?:e-?\d+)?/g, (number) => String(Number(Number(number).toFixed(2)) + 0));
}

const turns = { right: 0, down: 90, left: 180, up: 270 } as const;

function drawBounds({ points, towards, marker = 'circle' }: BoundsMark, frame: PlotFrame): string[] {
  const arrows = placed(points).map((point) =>
    svgElement('path', {
      d: `M0,0H${arrow}M${arrow - 7},-4.5L${arrow},0L${arrow - 7},4.5`,
      transform: `translate(${frame.x(point.x).toFixed(2)} ${frame.y(point.y).toFixed(2)}) rotate(${turns[towards]})`,
      ...strokeOf('solid', 1.6),
    }),
  );
  return [...arrows, ...markersAt(points, marker, frame)];
}

function drawLevel({ axis, at, style = 'dashed' }: LevelMark, { x, y, width, height }: PlotFrame): string {
  const ends =
    axis === 'x' ? { x1: x(at), x2: x(at), y1: 0, y2: height } : { x1: 0, x2: width, y1: y(at), y2: y(at) };
  return svgElement('line', { ...ends, ...strokeOf(style, 1.2) });
}

/** Stroke of a line in black, as attributes. */
function strokeOf(style: LineStyle, width: number) {
  return { fill: 'none', stroke: '#000', 'stroke-width': width, 'stroke-dasharray': dashes[style] };
}
