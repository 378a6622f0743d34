import { type CsvCell, formatCsv } from '../text/csv.ts';
import { axisLabel, type Plot, type PlotMark } from './plot.ts';

type Row = readonly [x: CsvCell, y: CsvCell, low: CsvCell, high: CsvCell];

/**
 * The numbers of a plot as comma-separated values, a row a point, in the units of its axes. `low` and `high` are the ends of
 * a band or an interval.
 */
export function formatPlotAsCsv({ x, y, marks }: Plot): string {
  const header = ['mark', 'name', axisLabel(x), axisLabel(y), 'low', 'high'];
  const rows = marks.flatMap((mark) => rowsOf(mark).map((row) => [mark.kind, nameOf(mark), ...row]));
  return formatCsv([header, ...rows]);
}

function rowsOf(mark: PlotMark): Row[] {
  switch (mark.kind) {
    case 'line':
    case 'points':
    case 'bounds':
      return mark.points.map((point) => [point.x, point.y, null, null]);
    case 'band':
      return mark.points.map((point) => [point.x, null, point.low, point.high]);
    case 'intervals':
      return mark.points.map((point) => [point.x, point.y, point.low, point.high]);
    case 'level':
      return [mark.axis === 'x' ? [mark.at, null, null, null] : [null, mark.at, null, null]];
    case 'note':
      return [];
    default:
      return mark satisfies never;
  }
}

function nameOf(mark: PlotMark): string {
  return 'label' in mark ? (mark.label ?? '') : '';
}
