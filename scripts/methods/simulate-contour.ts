import { type RandomSource, randomSource } from '../../src/statistics/random.ts';
import type { SimulatedBench } from './simulated-bench.ts';

const between = (random: RandomSource, low: number, high: number) => low + (high - low) * random.uniform();

/** Largest accepted ripple, mm. */
const accepted = 0.02;

const kinds = ['steady', 'sharp bend', 'hump past the limit', 'hump below the limit'] as const;

/** Ripple in units of the accepted one, by the speed in mm/s. */
type Ripple = (speed: number) => number;

function ripples(kind: (typeof kinds)[number], limit: number, random: RandomSource): Ripple {
  const power = between(random, 1.2, 3.5);
  const steady: Ripple = (speed) => (speed / limit) ** power;
  if (kind === 'steady') return steady;
  if (kind === 'sharp bend') {
    const [flat, steep] = [between(random, 0.3, 0.8), between(random, 4, 12)];
    const bend = limit * flat ** (1 / steep);
    return (speed) => flat * (speed / bend) ** (speed > bend ? steep : 0.2);
  }
  const [middle, width] = [limit * between(random, 0.6, 0.75), between(random, 8, 22)];
  const below = (middle / limit) ** power;
  const peak = kind === 'hump past the limit' ? between(random, 1.3, 3) : between(random, 0.6, 0.8);
  const height = Math.max(0.4, peak / below - 1);
  return (speed) => steady(speed) * (1 + height * Math.exp(-(((speed - middle) / width) ** 2)));
}

/** The lowest speed at which a ripple passes the accepted one. */
function firstPassing(ripple: Ripple): number {
  let speed = 20;
  while (ripple(speed) < 1) speed += 0.05;
  return speed;
}

/** Ripples or grades of an invented tower whose contours are printed ever faster, with and without a resonance. */
export function simulateContour(index: number, noise?: RandomSource): SimulatedBench {
  const random = randomSource(`contour ${index}`);
  const { normal } = noise ?? random;
  const kind = kinds[index % kinds.length] ?? 'steady';
  const graded = Math.floor(index / kinds.length) % 3 === 2;
  const ripple = ripples(kind, between(random, 110, 170), random);
  const [first, step] = [between(random, 30, 50), between(random, 12, 22)];
  const steps = Math.ceil((210 - first) / step);
  const repeats = 2 + Math.floor(random.uniform() * 2);
  const speeds = Array.from({ length: steps }, (_, place) => Math.round(first + place * step));
  const contourSpeed = speeds.flatMap((speed) => Array<number>(repeats).fill(speed));
  const scatter = between(random, 0.04, 0.13);
  const readings = contourSpeed.map((speed) => {
    const size = Math.min(ripple(speed), 50);
    if (!graded) return Math.round(1000 * accepted * size * Math.exp(scatter * normal())) / 1000;
    // A grade falls with the logarithm of the ripple, and passes 3.5 at the accepted one.
    return Math.min(5, Math.max(1, Math.round(3.5 - 1.8 * Math.log(size) + 0.25 * normal())));
  });
  return {
    kind: graded ? `${kind}, graded` : kind,
    columns: { contourSpeed, [graded ? 'grade' : 'rippleAmplitude']: readings },
    run: graded ? {} : { acceptedRipple: accepted, lengthResolution: 0.001 },
    truths: { contourSpeed: firstPassing(ripple) },
  };
}
