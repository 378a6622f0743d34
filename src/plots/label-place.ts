/** A rectangle in px. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Where a label could stand: the box that its text fills, and how the text is anchored to `x`. */
export interface LabelPlace extends Box {
  readonly anchor: 'start' | 'middle' | 'end';
}

/** A place in px that a label should leave free. */
export type Obstacle = readonly [x: number, y: number];

/**
 * The first of the places that hides least: labels that stand already and the edges of the frame weigh more than what
 * is drawn.
 */
export function freestPlace(
  places: readonly [LabelPlace, ...LabelPlace[]],
  obstacles: readonly Obstacle[],
  taken: readonly Box[],
  frame: { readonly width: number; readonly height: number },
): LabelPlace {
  const cost = (box: LabelPlace) =>
    obstacles.filter((obstacle) => holds(box, obstacle)).length +
    100 * taken.filter((other) => overlap(box, other)).length +
    (inside(box, frame) ? 0 : 1000);
  return places.reduce((best, place) => (cost(place) < cost(best) ? place : best));
}

/** Boxes beside a vertical line at `x`, from the top down. */
export function placesBesideVertical(x: number, width: number, height: number, frameHeight: number) {
  const box = (share: number, side: 'start' | 'end'): LabelPlace => ({
    left: side === 'start' ? x + 6 : x - 6 - width,
    top: 4 + share * (frameHeight - height - 8),
    ...{ width, height, anchor: side },
  });
  const [first, ...rest] = [0, 0.12, 0.24, 0.4, 0.55, 0.7, 0.85, 1].flatMap((share) => [
    box(share, 'start'),
    box(share, 'end'),
  ]);
  return [first ?? box(0, 'start'), ...rest] as const;
}

/** Boxes above and below a horizontal line at `y`, from the left to the right. */
export function placesBesideHorizontal(y: number, width: number, height: number, frameWidth: number) {
  const box = (share: number, side: 'above' | 'below'): LabelPlace => ({
    left: 8 + share * (frameWidth - width - 16),
    top: side === 'above' ? y - height - 3 : y + 3,
    ...{ width, height, anchor: 'start' },
  });
  const [first, ...rest] = [0, 1, 0.25, 0.5, 0.75].flatMap((share) => [
    box(share, 'above'),
    box(share, 'below'),
  ]);
  return [first ?? box(0, 'above'), ...rest] as const;
}

/** Boxes at the corners of a place. */
export function placesAround(x: number, y: number, width: number, height: number) {
  const [above, below] = [y - height - 5, y + 5];
  const box = (side: 'start' | 'end', top: number) => besideAt(x, 9, side, { top, width, height });
  return [box('start', above), box('end', above), box('start', below), box('end', below)] as const;
}

/** Boxes level with a place, on either side, then a little above or below that, for the name of a mark. */
export function placesLevel(x: number, y: number, width: number, height: number) {
  const box = (side: 'start' | 'end', shift: number) =>
    besideAt(x, 11, side, { top: y - height / 2 + shift * height, width, height });
  const rest = [-0.3, 0.3, -0.6, 0.6, -0.9, 0.9].flatMap((shift) => [box('start', shift), box('end', shift)]);
  return [box('start', 0), box('end', 0), ...rest] as const;
}

function besideAt(
  x: number,
  gap: number,
  side: 'start' | 'end',
  box: Omit<LabelPlace, 'left' | 'anchor'>,
): LabelPlace {
  return { ...box, left: side === 'start' ? x + gap : x - gap - box.width, anchor: side };
}

function holds({ left, top, width, height }: Box, [x, y]: Obstacle): boolean {
  return x >= left - 4 && x <= left + width + 4 && y >= top - 2 && y <= top + height + 2;
}

function overlap(one: Box, other: Box): boolean {
  return (
    one.left < other.left + other.width &&
    other.left < one.left + one.width &&
    one.top < other.top + other.height &&
    other.top < one.top + one.height
  );
}

function inside({ left, top, width, height }: Box, frame: { width: number; height: number }): boolean {
  return left >= 0 && top >= 0 && left + width <= frame.width && top + height <= frame.height;
}
