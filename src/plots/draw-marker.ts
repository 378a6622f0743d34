import {
  type SymbolType,
  symbol,
  symbolCircle,
  symbolDiamond,
  symbolPlus,
  symbolSquare,
  symbolTimes,
  symbolTriangle,
} from 'd3-shape';
import type { Marker } from './plot.ts';
import { svgElement } from './svg-element.ts';

/** Shape, area in px², and whether it is filled. */
const shapes: Readonly<Record<Marker, readonly [SymbolType, number, 'filled' | 'open']>> = {
  dot: [symbolCircle, 46, 'filled'],
  circle: [symbolCircle, 56, 'open'],
  square: [symbolSquare, 52, 'filled'],
  openSquare: [symbolSquare, 52, 'open'],
  triangle: [symbolTriangle, 50, 'filled'],
  openTriangle: [symbolTriangle, 50, 'open'],
  diamond: [symbolDiamond, 60, 'filled'],
  openDiamond: [symbolDiamond, 60, 'open'],
  plus: [symbolPlus, 56, 'open'],
  cross: [symbolTimes, 56, 'open'],
};

/** A marker at a place in px. */
export function drawMarker(marker: Marker, x: number, y: number): string {
  const [shape, area, fill] = shapes[marker];
  return svgElement('path', {
    d: symbol(shape, area).digits(2)() ?? '',
    transform: `translate(${x.toFixed(2)} ${y.toFixed(2)})`,
    fill: fill === 'filled' ? '#000' : '#fff',
    stroke: '#000',
    'stroke-width': 1.4,
  });
}
