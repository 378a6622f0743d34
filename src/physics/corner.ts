import type {
  Degrees,
  Millimetres,
  MillimetresPerSecond,
  MillimetresPerSecondSquared,
} from '../units/canonical.ts';

/** A corner between two straight stretches of a path, and how closely the head must follow it. */
export interface Corner {
  /** By how much the direction changes: 0 deg goes straight on, 180 deg comes straight back. */
  readonly deflection: Degrees;
  /** Largest distance between the corner and the way that the head takes. */
  readonly tolerance: Millimetres;
}

/**
 * Radius, in mm, of the arc that touches both legs of a corner and passes it at the tolerance (mm):
 * r = d c/(1 - c) with c the cosine of half the deflection. Infinite where the path goes straight on, 0 where it
 * comes straight back. Source: plane geometry; the centre lies r/c from the corner, so d = r/c - r.
 */
export function cornerRadius({ deflection, tolerance }: Corner): Millimetres {
  const cosine = Math.max(0, Math.cos((deflection * Math.PI) / 360));
  return cosine === 1 ? Number.POSITIVE_INFINITY : (tolerance * cosine) / (1 - cosine);
}

/**
 * Speed, in mm/s, at which the head passes a corner: on the arc of `cornerRadius` the acceleration (mm/s²) towards its
 * centre may be as large as the one along the path, v = sqrt(a r).
 * Source: OpenStax, University Physics vol. 1, section 4.4, centripetal acceleration a = v^2/r.
 */
export function cornerSpeed(corner: Corner, acceleration: MillimetresPerSecondSquared): MillimetresPerSecond {
  return Math.sqrt(acceleration * cornerRadius(corner));
}
