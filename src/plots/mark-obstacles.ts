import type { Obstacle } from './label-place.ts';
import type { PlotMark, PlotPoint } from './plot.ts';
import type { PlotFrame } from './plot-frame.ts';

/** Distance between the points that stand for a line, px. */
const spacing = 5;

/** Points in px that stand for what a mark draws, so that labels can keep off it. */
export function markObstacles(mark: PlotMark, frame: PlotFrame): Obstacle[] {
  const { x, y, width, height } = frame;
  const place = (point: PlotPoint): Obstacle => [x(point.x), y(point.y)];
  switch (mark.kind) {
    case 'line':
      return along(mark.points.map(place));
    case 'points':
    case 'bounds':
      return mark.points.map(place).flatMap(around);
    case 'intervals':
      return mark.points.flatMap((point) => {
        const ends = [point.low, point.high].map((end) => place({ ...point, [mark.along]: end }));
        return [...along(ends), ...around(place(point))];
      });
    case 'level': {
      const at = frame[mark.axis](mark.at);
      return along(
        mark.axis === 'x'
          ? [
              [at, 0],
              [at, height],
            ]
          : [
              [0, at],
              [width, at],
            ],
      );
    }
    case 'band':
      return (['low', 'high'] as const).flatMap((end) =>
        along(mark.points.map((point) => place({ x: point.x, y: point[end] }))),
      );
    case 'note':
      return [];
    default:
      return mark satisfies never;
  }
}

/** A marker counts several times: hiding it is worse than crossing a line. */
function around([x, y]: Obstacle): Obstacle[] {
  return [
    [x, y],
    [x - 5, y],
    [x + 5, y],
    [x, y - 5],
    [x, y + 5],
  ];
}

function along(corners: readonly Obstacle[]): Obstacle[] {
  return corners.flatMap((end, index) => {
    const start = corners[index - 1] ?? end;
    const length = Math.hypot(end[0] - start[0], end[1] - start[1]);
    // A line that leads far out of the frame needs no points out there.
    const count = Number.isFinite(length) ? Math.min(Math.ceil(length / spacing), 400) : 0;
    return Array.from({ length: count }, (_, step): Obstacle => {
      const share = (step + 1) / count;
      return [start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])];
    });
  });
}
