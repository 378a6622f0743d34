import { drawPlot } from '../../plots/draw-plot.ts';
import type { Plot } from '../../plots/plot.ts';
import { formatPlotAsCsv } from '../../plots/plot-as-csv.ts';
import { element, type Markup } from '../../text/html-element.ts';

/** A plot with its caption, its numbers and its picture to be saved under a name. */
export function plotFigure(plot: Plot, caption: string, name: string): Markup {
  const svg = drawPlot(plot);
  const file = (type: string, text: string) => `data:${type};charset=utf-8,${encodeURIComponent(text)}`;
  return element('figure', {}, [
    { markup: svg.trimEnd() },
    element('figcaption', {}, [
      `${caption} `,
      element('a', { href: file('text/csv', formatPlotAsCsv(plot)), download: `${name}.csv` }, [
        'Numbers (CSV)',
      ]),
      ' ',
      element('a', { href: file('image/svg+xml', svg), download: `${name}.svg` }, ['Picture (SVG)']),
    ]),
  ]);
}
