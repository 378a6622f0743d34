import { besselJ0, besselJ1, zerosOfBesselJ0, zerosOfBesselJ1 } from './bessel.ts';
import { bracketedRoot } from './bracketed-root.ts';

/**
 * Transient conduction in an infinite cylinder that starts at one temperature and is put into surroundings at another.
 * Everything here is dimensionless: theta = (T - T_surroundings)/(T_start - T_surroundings), 1 at the start and 0 at the
 * end; Fourier number Fo = a t/R^2; Biot number Bi = h R/k, infinite for a wall held at one temperature.
 * Source: Incropera, DeWitt, Bergman & Lavine, Fundamentals of Heat and Mass Transfer, section 5.6.
 */

/** One term C exp(-z^2 Fo) J0(z r/R) of the series. */
interface ConductionMode {
  /** z, a root of z J1(z) = Bi J0(z). */
  readonly root: number;
  /** C = (2/z) J1(z)/(J0(z)^2 + J1(z)^2). */
  readonly coefficient: number;
}

/** exp(-40) is far below the last digit of a number near 1. */
const NEGLIGIBLE_EXPONENT = 40;
/** Enough for Fo = 3e-5 in full; below that the mean is still within 0.001. */
const MAXIMUM_MODES = 400;

/** The first modes of the series for a Biot number > 0 (`Infinity` for a wall held at one temperature). */
export function conductionModes(biot: number, count: number): readonly ConductionMode[] {
  const known = modesOfBiot.get(biot) ?? [];
  if (known.length >= count) return known.slice(0, count);
  const modes = conductionRoots(biot, count).map((root) => {
    const [j0, j1] = [besselJ0(root), besselJ1(root)];
    return { root, coefficient: (2 * j1) / (root * (j0 ** 2 + j1 ** 2)) };
  });
  if (modesOfBiot.size < MOST_BIOT_NUMBERS) modesOfBiot.set(biot, modes);
  return modes;
}

/** The modes that are known already: every filament in a hot tube has the same ones. */
const modesOfBiot = new Map<number, readonly ConductionMode[]>();
const MOST_BIOT_NUMBERS = 16;

/** theta at a radius given as r/R (0 centre, 1 surface), from the full series. A Fourier number <= 0 gives 1, and so does Bi <= 0. */
export function cylinderTheta(fourier: number, biot: number, radiusRatio: number): number {
  return sumOfModes(fourier, biot, (root) => besselJ0(root * radiusRatio));
}

/** theta on the axis, from the full series. */
export function cylinderCentreTheta(fourier: number, biot = Number.POSITIVE_INFINITY): number {
  return cylinderTheta(fourier, biot, 0);
}

/** theta averaged over the cross-section, from the full series: the mean of J0(z r/R) over the disc is 2 J1(z)/z. */
export function cylinderMeanTheta(fourier: number, biot = Number.POSITIVE_INFINITY): number {
  return sumOfModes(fourier, biot, (root) => (2 * besselJ1(root)) / root);
}

/** The Fourier number at which the axis has come down to a theta: 0 for theta >= 1, infinite for theta <= 0. */
export function fourierForCentreTheta(theta: number, biot = Number.POSITIVE_INFINITY): number {
  if (theta >= 1) {
    return 0;
  }
  if (theta <= 0 || biot <= 0) {
    return Number.POSITIVE_INFINITY;
  }
  const excess = (fourier: number): number => cylinderCentreTheta(fourier, biot) - theta;
  let high = 1;
  while (excess(high) > 0) {
    high *= 2;
  }
  let low = high / 2;
  while (excess(low) < 0) {
    low /= 2;
  }
  return bracketedRoot(excess, low, high);
}

function conductionRoots(biot: number, count: number): number[] {
  const upper = zerosOfBesselJ0(count);
  if (biot === Number.POSITIVE_INFINITY) {
    return upper;
  }
  const lower = [0, ...zerosOfBesselJ1(count - 1)];
  const condition = (z: number): number => z * besselJ1(z) - biot * besselJ0(z);
  return upper.map((high, index) => bracketedRoot(condition, lower[index] ?? 0, high));
}

function sumOfModes(fourier: number, biot: number, shape: (root: number) => number): number {
  if (fourier <= 0 || biot <= 0) {
    return 1;
  }
  const count = Math.ceil(Math.sqrt(NEGLIGIBLE_EXPONENT / fourier) / Math.PI) + 1;
  const modes = conductionModes(biot, Math.min(count, MAXIMUM_MODES));
  const sum = modes.reduce(
    (total, { root, coefficient }) => total + coefficient * Math.exp(-(root ** 2) * fourier) * shape(root),
    0,
  );
  return Math.min(1, Math.max(0, sum));
}
