import type { Plot } from './plot.ts';
import { type PlotScale, plotScale } from './plot-scale.ts';

/** Sizes in the picture, in px of its view box. */
export const pictureSize = { width: 720, fontSize: 14, lineHeight: 20 } as const;

/** The rectangle that holds the marks, and the scales of its sides. Lengths in px. */
export interface PlotFrame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  readonly xScale: PlotScale;
  readonly yScale: PlotScale;
  /** From numbers of the axes to px inside of the frame. */
  readonly x: (value: number) => number;
  readonly y: (value: number) => number;
}

const marksHeight = 340;

/** Lays out the frame below so many px of title and legend. */
export function plotFrame(plot: Plot, top: number): PlotFrame {
  const xScale = plotScale(plot, 'x', 8);
  const yScale = plotScale(plot, 'y', 6);
  const left = 46 + Math.max(...yScale.ticks.map(({ text }) => textWidth(text)), 0);
  const width = pictureSize.width - left - 22;
  return {
    ...{ left, top, width, height: marksHeight, xScale, yScale },
    x: (value) => xScale.share(value) * width,
    y: (value) => (1 - yScale.share(value)) * marksHeight,
  };
}

/** About the width of a text in px: sans-serif letters are 0.45 to 0.55 of their height wide on average. */
export function textWidth(text: string): number {
  return [...text].length * 0.53 * pictureSize.fontSize;
}
