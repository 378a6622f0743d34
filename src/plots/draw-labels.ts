import {
  type Box,
  freestPlace,
  type LabelPlace,
  placesAround,
  placesBesideHorizontal,
  placesBesideVertical,
  placesLevel,
} from './label-place.ts';
import { markObstacles } from './mark-obstacles.ts';
import type { LevelMark, NoteMark, Plot } from './plot.ts';
import { type PlotFrame, pictureSize, textWidth } from './plot-frame.ts';
import { svgText } from './svg-element.ts';

/** The labels of levels and notes, each where it hides least. */
export function drawLabels(plot: Plot, frame: PlotFrame): string[] {
  const obstacles = plot.marks.flatMap((mark) => markObstacles(mark, frame));
  const taken: Box[] = [];
  return plot.marks.flatMap((mark) => {
    if (mark.kind !== 'level' && mark.kind !== 'note') return [];
    const text = mark.kind === 'level' ? mark.label : mark.text;
    if (text === '') return [];
    const place = freestPlace(placesOf(mark, text, frame), obstacles, taken, frame);
    taken.push(place);
    return [drawLabel(text, place)];
  });
}

function placesOf(mark: LevelMark | NoteMark, text: string, { x, y, width, height }: PlotFrame) {
  const size = [textWidth(text), pictureSize.lineHeight - 2] as const;
  if (mark.kind === 'note') {
    const places = mark.namesMark ? placesLevel : placesAround;
    return places(x(mark.at.x), y(mark.at.y), ...size);
  }
  return mark.axis === 'x'
    ? placesBesideVertical(x(mark.at), ...size, height)
    : placesBesideHorizontal(y(mark.at), ...size, width);
}

/** The white rim keeps a text readable on a line or band. */
function drawLabel(text: string, { left, top, width, height, anchor }: LabelPlace): string {
  const x = { start: left, middle: left + width / 2, end: left + width }[anchor];
  return svgText(
    'text',
    {
      ...{ x, y: top + height - 4, 'text-anchor': anchor === 'start' ? undefined : anchor },
      ...{ stroke: '#fff', 'stroke-width': 4, 'stroke-linejoin': 'round', 'paint-order': 'stroke' },
    },
    text,
  );
}
