import { printable } from '../text/printable.ts';
import { brailleCanvas } from './braille-canvas.ts';
import { axisLabel, type Plot, type PlotMark } from './plot.ts';
import { type PlotScale, plotScale } from './plot-scale.ts';
import { arrowCharacters, bandShows, drawTextMark, markerCharacters } from './text-mark.ts';

/** Size of a text plot in characters: the whole width, and the height of what lies between the axes. */
export interface TextPlotSize {
  readonly width?: number;
  readonly height?: number;
}

/** Draws a plot for a terminal, in braille dots and plain characters without colour. Every line ends with `\n`. */
export function drawTextPlot(plot: Plot, { width = 72, height = 16 }: TextPlotSize = {}): string {
  const yScale = plotScale(plot, 'y', 5);
  const gutter = Math.max(...yScale.ticks.map(({ text }) => text.length), 0) + 1;
  const columns = Math.max(width - gutter - 1, 16);
  const xScale = plotScale(plot, 'x', Math.floor(columns / 10));
  const canvas = brailleCanvas(columns, height);
  const frame = { canvas, columns, rows: height, xScale, yScale };
  const marks = plot.marks.filter((mark) => mark.kind !== 'band' || bandShows(mark, frame));
  for (const mark of inDrawingOrder(marks)) drawTextMark(mark, frame);
  const labels = new Map(
    yScale.ticks.map(({ value, text }) => [Math.round((1 - yScale.share(value)) * (height - 1)), text]),
  );
  const rows = canvas
    .lines()
    .map((line, row) => `${(labels.get(row) ?? '').padStart(gutter)}${labels.has(row) ? '┤' : '│'}${line}`);
  const lines = [
    printable(plot.title),
    printable(axisLabel(plot.y)),
    ...rows,
    ...horizontalAxis(xScale, columns, gutter),
    printable(axisLabel(plot.x)).padStart(width),
    ...key(marks, width),
  ];
  return lines.map((line) => `${line.trimEnd()}\n`).join('');
}

/** Characters hide each other, so what is small comes last. */
function inDrawingOrder(marks: readonly PlotMark[]): PlotMark[] {
  const order: readonly PlotMark['kind'][] = [
    ...(['band', 'level', 'line', 'points', 'bounds', 'intervals', 'note'] as const),
  ];
  return [...marks].sort((one, other) => order.indexOf(one.kind) - order.indexOf(other.kind));
}

function horizontalAxis({ ticks, share }: PlotScale, columns: number, gutter: number): [string, string] {
  const rule = new Array<string>(columns).fill('─');
  const numbers = new Array<string>(columns + gutter + 8).fill(' ');
  let free = 0;
  for (const { value, text } of ticks) {
    const column = Math.round(share(value) * (columns - 1));
    rule[column] = '┬';
    const start = Math.max(gutter + 1 + column - Math.floor(text.length / 2), 0);
    if (start < free) continue;
    for (const [offset, character] of [...text].entries()) numbers[start + offset] = character;
    free = start + text.length + 1;
  }
  return [`${' '.repeat(gutter)}└${rule.join('')}`, numbers.join('')];
}

/** What each sign means, as many to a line as fit. */
function key(marks: readonly PlotMark[], width: number): string[] {
  const lines: string[] = [];
  for (const entry of marks.flatMap(keyEntry)) {
    const last = lines.at(-1);
    const longer = last === undefined ? entry : `${last}   ${entry}`;
    if (last === undefined || longer.length > width) lines.push(entry);
    else lines[lines.length - 1] = longer;
  }
  return lines;
}

function keyEntry(mark: PlotMark): string[] {
  if (mark.kind === 'note') return mark.text === '' ? [] : [printable(mark.text)];
  return mark.label === undefined || mark.label === '' ? [] : [`${sign(mark)} ${printable(mark.label)}`];
}

function sign(mark: Exclude<PlotMark, { kind: 'note' }>): string {
  switch (mark.kind) {
    case 'line': {
      const dots = { solid: '⠒⠒⠒', dashed: '⠒⠂⠒', dotted: '⠂⠂⠂', dashDotted: '⠒⠄⠒' }[mark.style ?? 'solid'];
      return mark.marker === undefined ? dots : `${markerCharacters[mark.marker]}${dots}`;
    }
    case 'band':
      return '⠂⠂⠂';
    case 'points':
      return markerCharacters[mark.marker ?? 'circle'];
    case 'bounds':
      return `${markerCharacters[mark.marker ?? 'circle']}${arrowCharacters[mark.towards]}`;
    case 'intervals':
      return `|${markerCharacters[mark.marker ?? 'diamond']}|`;
    case 'level':
      return mark.axis === 'x' ? ':' : '- -';
    default:
      return mark satisfies never;
  }
}
