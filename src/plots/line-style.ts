import type { LineStyle } from './plot.ts';

const dashes: Readonly<Record<LineStyle, string | undefined>> = {
  solid: undefined,
  dashed: '9 5',
  dotted: '2 4',
  dashDotted: '11 4 2 4',
};

/** Stroke of a line in black, as attributes. */
export function strokeOf(style: LineStyle, width: number) {
  return { fill: 'none', stroke: '#000', 'stroke-width': width, 'stroke-dasharray': dashes[style] };
}
