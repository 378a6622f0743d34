import { drawPlot } from '../../plots/draw-plot.ts';
import type { Plot } from '../../plots/plot.ts';
import { formatPlotAsCsv } from '../../plots/plot-as-csv.ts';
import type { Picture } from '../../text/document.ts';
import { link, type Piece } from '../../text/inline.ts';
import { besidePage, type WayTo } from '../address.ts';
import type { SiteFile } from '../site-file.ts';

/** A plot beside a page: its numbers and its picture, under names that no id of a profile has. */
export function plotFiles(page: string, name: string, plot: Plot): SiteFile[] {
  return [
    { path: besidePage(page, `--${name}.csv`), text: formatPlotAsCsv(plot) },
    { path: besidePage(page, `--${name}.svg`), text: drawPlot(plot) },
  ];
}

/** Links to both, to be shown below the plot. */
export function plotLinks(page: string, name: string, to: WayTo): Piece[] {
  return [
    link('Numbers (CSV)', to(besidePage(page, `--${name}.csv`))),
    link('Picture (SVG)', to(besidePage(page, `--${name}.svg`))),
  ];
}

export function plotPicture(page: string, name: string, plot: Plot, to: WayTo, caption: string): Picture {
  const links = plotLinks(page, name, to).flatMap((each) => [' ', each]);
  return {
    kind: 'picture',
    svg: drawPlot(plot),
    characters: null,
    description: plot.description,
    caption: [caption, ...links],
  };
}
