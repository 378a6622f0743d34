import { drawAxes, drawGrid } from './draw-axes.ts';
import { drawLabels } from './draw-labels.ts';
import { drawLegend } from './draw-legend.ts';
import { drawMark } from './draw-mark.ts';
import type { Plot } from './plot.ts';
import { pictureSize, plotFrame, textWidth } from './plot-frame.ts';
import { svgElement, svgText } from './svg-element.ts';

/**
 * Draws a plot as a self-contained SVG picture, black on white, which a screen reader announces by its title and
 * description. It uses attributes alone, so that it also shows where a page forbids styles of its own. The same plot
 * gives the same bytes.
 */
export function drawPlot(plot: Plot): string {
  const picture = drawn.get(plot) ?? pictureOf(plot);
  drawn.set(plot, picture);
  return picture;
}

/** Where labels go takes long to find out, and a picture often stands both in a page and in a file of its own. */
const drawn = new WeakMap<Plot, string>();

function pictureOf(plot: Plot): string {
  const legend = drawLegend(plot.marks, titleHeight);
  const frame = plotFrame(plot, titleHeight + legend.height + 4);
  const height = frame.top + frame.height + 58;
  const id = idFrom(plot.title);
  const marks = [...drawGrid(frame), ...plot.marks.flatMap((mark) => drawMark(mark, frame))];
  const inside = { x: frame.left, y: frame.top, width: frame.width, height: frame.height };
  return `${svgElement(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${pictureSize.width} ${height}`,
      ...{ width: pictureSize.width, height, role: 'img', 'aria-labelledby': `${id}-title ${id}-desc` },
      'font-family': 'Liberation Sans, Arial, Helvetica, sans-serif',
      'font-size': pictureSize.fontSize,
    },
    [
      svgText('title', { id: `${id}-title` }, plot.title),
      svgText('desc', { id: `${id}-desc` }, plot.description),
      svgElement('rect', { width: pictureSize.width, height, fill: '#fff' }),
      svgText(
        'text',
        { x: 22, y: 24, 'font-size': titleSize(plot.title), 'font-weight': 'bold' },
        plot.title,
      ),
      ...legend.elements,
      // An inner picture clips what leads out of the frame, without an id that another picture could share.
      svgElement('svg', { ...inside, overflow: 'hidden', 'aria-hidden': 'true' }, marks),
      ...drawAxes(plot, frame),
      svgElement(
        'g',
        { transform: `translate(${frame.left.toFixed(2)} ${frame.top})` },
        drawLabels(plot, frame),
      ),
    ],
  )}\n`;
}

const titleHeight = 38;

/** Bold letters are wider; a long title becomes smaller rather than cut. */
function titleSize(title: string): number {
  const width = 1.1 * textWidth(title);
  return Math.min(16, (pictureSize.fontSize * (pictureSize.width - 44)) / width);
}

/** A name that several pictures of one page do not share unless their titles are the same. */
function idFrom(title: string): string {
  const words = title.toLowerCase().replace(/[^a-z0-9]+/g, '-');
  return `plot-${words.replace(/^-+|-+$/g, '')}`;
}
