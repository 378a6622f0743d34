export { drawPlot } from '../plots/draw-plot.ts';
export { drawTextPlot, type TextPlotSize } from '../plots/draw-text-plot.ts';
export type { LineStyle, Marker, Plot, PlotAxis, PlotMark, PlotPoint } from '../plots/plot.ts';
export { formatPlotAsCsv } from '../plots/plot-as-csv.ts';
