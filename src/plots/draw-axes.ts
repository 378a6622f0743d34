import { axisLabel, type Plot } from './plot.ts';
import type { PlotFrame } from './plot-frame.ts';
import { svgElement, svgText } from './svg-element.ts';

/** Length of a tick, px. */
const tick = 6;

/** Faint lines across the frame at the ticks of the y axis. */
export function drawGrid({ yScale, y, width }: PlotFrame): string[] {
  return yScale.ticks.map(({ value }) =>
    svgElement('line', { x1: 0, x2: width, y1: y(value), y2: y(value), stroke: '#ddd', 'stroke-width': 1 }),
  );
}

/** The frame with ticks, numbers, quantities and units, in px of the whole picture. */
export function drawAxes(plot: Plot, frame: PlotFrame): string[] {
  const { left, top, width, height } = frame;
  const bottom = top + height;
  return [
    svgElement('rect', {
      ...{ x: left, y: top, width, height },
      ...{ fill: 'none', stroke: '#000', 'stroke-width': 1.2 },
    }),
    svgElement('path', { d: tickPath(frame), fill: 'none', stroke: '#000', 'stroke-width': 1.2 }),
    ...frame.xScale.ticks.map(({ value, text }) =>
      svgText(
        'text',
        { x: left + frame.x(value), y: bottom + tick + 16, 'text-anchor': 'middle' },
        minus(text),
      ),
    ),
    ...frame.yScale.ticks.map(({ value, text }) =>
      svgText('text', { x: left - tick - 4, y: top + frame.y(value) + 5, 'text-anchor': 'end' }, minus(text)),
    ),
    svgText(
      'text',
      { x: left + width / 2, y: bottom + tick + 40, 'text-anchor': 'middle' },
      axisLabel(plot.x),
    ),
    svgText(
      'text',
      {
        'text-anchor': 'middle',
        transform: `translate(18 ${(top + height / 2).toFixed(2)}) rotate(-90)`,
      },
      axisLabel(plot.y),
    ),
  ];
}

function tickPath({ left, top, height, xScale, yScale, x, y }: PlotFrame): string {
  const across = xScale.ticks.map(({ value }) => `M${(left + x(value)).toFixed(2)},${top + height}v${tick}`);
  const up = yScale.ticks.map(({ value }) => `M${left.toFixed(2)},${(top + y(value)).toFixed(2)}h-${tick}`);
  return [...across, ...up].join('');
}

/** A minus sign is as wide as a plus; a hyphen is not. */
function minus(number: string): string {
  return number.replace('-', '\u2212');
}
