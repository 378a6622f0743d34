/** A place in the units of the plot's axes. */
export interface PlotPoint {
  readonly x: number;
  readonly y: number;
}

/** How a line is drawn; told apart without colour. */
export type LineStyle = 'solid' | 'dashed' | 'dotted' | 'dashDotted';

/** How a point is drawn; told apart without colour. */
export type Marker =
  | 'dot'
  | 'circle'
  | 'square'
  | 'openSquare'
  | 'triangle'
  | 'openTriangle'
  | 'diamond'
  | 'openDiamond'
  | 'plus'
  | 'cross';

/** A curve or, with `step`, a line that keeps each value until the next point. */
export interface LineMark {
  readonly kind: 'line';
  /** Name in the legend; without one the mark is not listed. */
  readonly label?: string;
  readonly points: readonly PlotPoint[];
  readonly style?: LineStyle;
  readonly step?: boolean;
  readonly marker?: Marker;
}

/** The area between two curves. */
export interface BandMark {
  readonly kind: 'band';
  readonly label?: string;
  readonly points: readonly { readonly x: number; readonly low: number; readonly high: number }[];
}

interface PointsMark {
  readonly kind: 'points';
  readonly label?: string;
  readonly points: readonly PlotPoint[];
  readonly marker?: Marker;
}

/** Points with a bar from `low` to `high` along one axis, such as a value with its coverage interval. */
export interface IntervalsMark {
  readonly kind: 'intervals';
  readonly label?: string;
  /** The axis along which the bars lie. */
  readonly along: 'x' | 'y';
  readonly points: readonly (PlotPoint & { readonly low: number; readonly high: number })[];
  readonly marker?: Marker;
}

/** Points with an arrow: the true value lies at the point or further on. */
export interface BoundsMark {
  readonly kind: 'bounds';
  readonly label?: string;
  readonly towards: 'up' | 'down' | 'left' | 'right';
  readonly points: readonly PlotPoint[];
  readonly marker?: Marker;
}

/** A line across the plot at one value of an axis, with its label beside it. */
export interface LevelMark {
  readonly kind: 'level';
  /** The axis on which the value stands: a level of `y` is a horizontal line. */
  readonly axis: 'x' | 'y';
  readonly at: number;
  readonly label: string;
  readonly style?: LineStyle;
}

/** A text beside a place of the plot. */
export interface NoteMark {
  readonly kind: 'note';
  readonly at: PlotPoint;
  readonly text: string;
  /** Whether it names a mark that stands there, and so belongs level with it. */
  readonly namesMark?: true;
}

/** Anything that a plot shows, told apart by `type`; values are in the units of the axes. */
export type PlotMark = LineMark | BandMark | PointsMark | IntervalsMark | BoundsMark | LevelMark | NoteMark;

/** One axis of a plot. */
export interface PlotAxis {
  /** What is shown, such as `commanded flow`. */
  readonly quantity: string;
  /** Its unit as printed, such as `mm³/s`; empty for a plain number. */
  readonly unit: string;
  /** The ends of the axis; by default what all marks need, and a little more. */
  readonly range?: readonly [low: number, high: number];
}

/** A picture in numbers, which `drawPlot` and `drawTextPlot` draw. Later marks lie on earlier ones. */
export interface Plot {
  readonly title: string;
  /** What the plot shows, in words, for those who cannot see it. */
  readonly description: string;
  readonly x: PlotAxis;
  readonly y: PlotAxis;
  readonly marks: readonly PlotMark[];
}

/** `commanded flow (mm³/s)`. */
export function axisLabel({ quantity, unit }: PlotAxis): string {
  return unit === '' ? quantity : `${quantity} (${unit})`;
}
