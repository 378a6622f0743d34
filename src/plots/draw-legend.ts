import { drawMark } from './draw-mark.ts';
import type { PlotMark } from './plot.ts';
import { type PlotFrame, pictureSize, textWidth } from './plot-frame.ts';
import { svgElement, svgText } from './svg-element.ts';

/** Width of the sample of a mark, px. */
const sample = 34;
const gap = 22;

/** The names of the marks with a sample of each, in rows below `top`; `height` is what they take, px. */
interface Legend {
  readonly height: number;
  readonly elements: readonly string[];
}

export function drawLegend(marks: readonly PlotMark[], top: number): Legend {
  const named = marks.filter((mark) => labelOf(mark) !== undefined);
  let x = gap;
  let row = 0;
  const elements = named.map((mark) => {
    const label = labelOf(mark) ?? '';
    const width = sample + 8 + textWidth(label);
    if (x > gap && x + width > pictureSize.width - gap) {
      x = gap;
      row++;
    }
    const left = x;
    x += width + gap;
    return svgElement('g', { transform: `translate(${left.toFixed(2)} ${top + row * rowHeight})` }, [
      ...samplesOf(mark).flatMap((part) => drawMark(part, sampleFrame)),
      svgText('text', { x: sample + 8, y: 15 }, label),
    ]);
  });
  return { height: named.length === 0 ? 0 : (row + 1) * rowHeight + 6, elements };
}

const rowHeight = pictureSize.lineHeight + 2;

function labelOf(mark: PlotMark): string | undefined {
  return mark.kind === 'level' || mark.kind === 'note' ? undefined : mark.label;
}

/** Numbers from 0 to 1 on a box of the size of a sample. */
const sampleFrame: PlotFrame = {
  ...{ left: 0, top: 0, width: sample, height: pictureSize.lineHeight },
  xScale: { low: 0, high: 1, share: (value) => value, ticks: [] },
  yScale: { low: 0, high: 1, share: (value) => value, ticks: [] },
  x: (value) => value * sample,
  y: (value) => (1 - value) * pictureSize.lineHeight,
};

const middle = [{ x: 0.5, y: 0.5 }];

function samplesOf(mark: PlotMark): PlotMark[] {
  switch (mark.kind) {
    case 'line': {
      const { marker, style = 'solid' } = mark;
      const stroke = { kind: 'line', style, points: [0, 1].map((x) => ({ x, y: 0.5 })) } as const;
      return marker === undefined ? [stroke] : [stroke, { kind: 'points', marker, points: middle }];
    }
    case 'band':
      return [{ ...mark, points: [0, 1].map((x) => ({ x, low: 0.15, high: 0.85 })) }];
    case 'points':
      return [{ ...mark, points: middle }];
    case 'bounds':
      return [{ ...mark, towards: 'right', points: [{ x: 0.15, y: 0.5 }] }];
    case 'intervals':
      return [{ ...mark, along: 'x', points: [{ x: 0.5, y: 0.5, low: 0.1, high: 0.9 }] }];
    case 'level':
    case 'note':
      return [];
    default:
      return mark satisfies never;
  }
}
