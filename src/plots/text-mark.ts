import type { BrailleCanvas } from './braille-canvas.ts';
import type {
  BandMark,
  BoundsMark,
  IntervalsMark,
  LevelMark,
  LineMark,
  LineStyle,
  Marker,
  PlotMark,
  PlotPoint,
} from './plot.ts';
import type { PlotScale } from './plot-scale.ts';

/** The characters of a text plot that are not made of dots; all are one column wide in every terminal. */
export const markerCharacters: Readonly<Record<Marker, string>> = {
  ...{ dot: '*', circle: 'o', square: '#', openSquare: 'H', triangle: '^', openTriangle: 'A' },
  ...{ diamond: '@', openDiamond: '%', plus: '+', cross: 'x' },
};

export const arrowCharacters = { up: '^', down: 'v', left: '<', right: '>' } as const;
const arrowSteps = { up: [0, 1], down: [0, -1], left: [-1, 0], right: [1, 0] } as const;

/** Which dots of a line are set, in turn. */
const patterns: Readonly<Record<LineStyle, readonly boolean[]>> = {
  solid: [true],
  dashed: [true, true, true, true, false, false, false],
  dotted: [true, false, false],
  dashDotted: [true, true, true, true, false, false, true, false, false],
};

/** Where a text plot is drawn. */
interface TextFrame {
  readonly canvas: BrailleCanvas;
  readonly columns: number;
  readonly rows: number;
  readonly xScale: PlotScale;
  readonly yScale: PlotScale;
}

/** Draws a mark with dots and characters. A note is not drawn: its text stands in the key. */
export function drawTextMark(mark: PlotMark, frame: TextFrame): void {
  if (mark.kind === 'line') drawLine(mark, frame);
  else if (mark.kind === 'band') drawBand(mark, frame);
  else if (mark.kind === 'points') drawMarkers(mark.points, mark.marker, frame);
  else if (mark.kind === 'bounds') drawBounds(mark, frame);
  else if (mark.kind === 'intervals') drawIntervals(mark, frame);
  else if (mark.kind === 'level') drawLevel(mark, frame);
}

function shares({ x, y }: PlotPoint, { xScale, yScale }: TextFrame): Shares {
  return [xScale.share(x), yScale.share(y)];
}

function drawMarkers(
  points: readonly PlotPoint[],
  marker: Marker | undefined = 'circle',
  frame: TextFrame,
): void {
  for (const point of points) frame.canvas.character(...shares(point, frame), markerCharacters[marker]);
}

function drawLine({ points, style = 'solid', step = false, marker }: LineMark, frame: TextFrame): void {
  const finite = points.filter(({ x, y }) => Number.isFinite(x) && Number.isFinite(y));
  const corners = step
    ? finite.flatMap((point, index) => [{ x: point.x, y: finite[index - 1]?.y ?? point.y }, point])
    : finite;
  const pattern = patterns[style];
  let drawn = 0;
  for (const [index, end] of corners.entries()) {
    const [x0, y0] = shares(corners[index - 1] ?? end, frame);
    const [x1, y1] = shares(end, frame);
    const count = dotsBetween(x1 - x0, y1 - y0, frame);
    for (let dot = 1; dot <= count; dot++) {
      const share = dot / count;
      if (pattern[drawn++ % pattern.length]) frame.canvas.dot(x0 + share * (x1 - x0), y0 + share * (y1 - y0));
    }
  }
  if (marker !== undefined) drawMarkers(points, marker, frame);
}

/** No more dots than a line across ten frames needs, however far out it leads. */
function dotsBetween(across: number, up: number, { columns, rows }: TextFrame): number {
  const needed = Math.ceil(Math.max(Math.abs(across) * columns * 2, Math.abs(up) * rows * 4));
  return Math.min(needed, 10 * Math.max(columns * 2, rows * 4));
}

/** Whether a band is anywhere wider than the line that runs in it. */
export function bandShows({ points }: BandMark, frame: TextFrame): boolean {
  return points.some((point) => isWide(point, frame));
}

function isWide({ low, high }: BandMark['points'][number], { yScale, rows }: TextFrame): boolean {
  return (yScale.share(high) - yScale.share(low)) * rows > 1.5;
}

/** The outlines of a band, where they would not merge with the line that runs in it. */
function drawBand({ points }: BandMark, frame: TextFrame): void {
  for (const end of ['low', 'high'] as const) {
    const ends = points.map((point) => ({ x: point.x, y: isWide(point, frame) ? point[end] : Number.NaN }));
    for (const [index, to] of ends.entries()) {
      const from = ends[index - 1];
      if (from !== undefined && Number.isFinite(from.y) && Number.isFinite(to.y)) {
        drawLine({ kind: 'line', style: 'dotted', points: [from, to] }, frame);
      }
    }
  }
}

function drawBounds({ points, marker, towards }: BoundsMark, frame: TextFrame): void {
  const [right, up] = arrowSteps[towards];
  for (const point of points) {
    const [x, y] = shares(point, frame);
    frame.canvas.character(
      x + right / (frame.columns - 1),
      y + up / (frame.rows - 1),
      arrowCharacters[towards],
    );
  }
  drawMarkers(points, marker, frame);
}

function drawIntervals({ points, along, marker = 'diamond' }: IntervalsMark, frame: TextFrame): void {
  for (const point of points) {
    drawBar(
      shares({ ...point, [along]: point.low }, frame),
      shares({ ...point, [along]: point.high }, frame),
      along,
      frame,
    );
  }
  drawMarkers(points, marker, frame);
}

type Shares = readonly [x: number, y: number];

function drawBar(low: Shares, high: Shares, along: 'x' | 'y', { canvas, columns, rows }: TextFrame): void {
  if (![...low, ...high].every(Number.isFinite)) return;
  const cells = (along === 'x' ? columns : rows) - 1;
  const count = Math.min(Math.ceil(Math.hypot(high[0] - low[0], high[1] - low[1]) * cells), cells);
  for (let cell = 0; cell <= count; cell++) {
    const share = count === 0 ? 0 : cell / count;
    const character = along === 'x' && cell !== 0 && cell !== count ? '-' : '|';
    canvas.character(low[0] + share * (high[0] - low[0]), low[1] + share * (high[1] - low[1]), character);
  }
}

function drawLevel({ axis, at }: LevelMark, { canvas, columns, rows, xScale, yScale }: TextFrame): void {
  if (axis === 'y') {
    const y = yScale.share(at);
    for (let column = 0; column < columns; column += 2) canvas.character(column / (columns - 1), y, '-');
  } else {
    const x = xScale.share(at);
    for (let row = 0; row < rows; row += 2) canvas.character(x, row / (rows - 1), ':');
  }
}
