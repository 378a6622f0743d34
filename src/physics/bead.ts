import type {
  CubicMillimetresPerSecond,
  Millimetres,
  MillimetresPerSecond,
  SquareMillimetres,
} from '../units/canonical.ts';

/** True if a bead can be a rounded rectangle: both sizes positive and the line at least as wide as the layer is high. */
export function isBeadFeasible(layerHeight: Millimetres, lineWidth: Millimetres): boolean {
  return layerHeight > 0 && lineWidth >= layerHeight;
}

/**
 * Cross-section of a deposited bead, in mm², as a rectangle with half-round flanks: A = h(w - h) + pi h^2/4.
 * Holds for beads that pass `isBeadFeasible`; a narrower line does not fill its layer, and the formula then has no meaning.
 * Source: common practice, no source; plane geometry.
 */
export function beadArea(layerHeight: Millimetres, lineWidth: Millimetres): SquareMillimetres {
  return layerHeight * (lineWidth - layerHeight) + (Math.PI * layerHeight ** 2) / 4;
}

/** Nozzle speed, in mm/s, at which a volume flow lays a bead of the given area (mm²): v = Q/A. Source: continuity. */
export function speedAtFlow(flow: CubicMillimetresPerSecond, area: SquareMillimetres): MillimetresPerSecond {
  return flow / area;
}

/** Volume flow, in mm³/s, that a bead of the given area (mm²) takes at a nozzle speed: Q = vA. Source: continuity. */
export function flowAtSpeed(speed: MillimetresPerSecond, area: SquareMillimetres): CubicMillimetresPerSecond {
  return speed * area;
}
