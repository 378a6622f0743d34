import { type RandomSource, randomSource } from '../../src/statistics/random.ts';
import type { SimulatedBench } from './simulated-bench.ts';

/** A head that is moved by small steps of time; written apart from the formulas that a reduction fits. */
interface Head {
  /** Reached, in mm/s and mm/s2. */
  readonly speed: number;
  readonly acceleration: number;
  /** Time in which the acceleration builds up, s. */
  readonly rounding: number;
}

/** Steps of a ramp. */
const steps = 400;

interface Ramp {
  readonly time: number;
  readonly distance: number;
  readonly highest: number;
}

/** A ramp from standstill to a speed: the acceleration goes up and down at an even rate, and is level between. */
function ramp(speed: number, { acceleration, rounding }: Head): Ramp {
  if (rounding === 0) {
    return { time: speed / acceleration, distance: speed ** 2 / (2 * acceleration), highest: acceleration };
  }
  const jerk = acceleration / rounding;
  const rise = Math.min(rounding, Math.sqrt(speed / jerk));
  const highest = jerk * rise;
  const time = 2 * rise + Math.max(0, speed / highest - rise);
  const step = time / steps;
  let [velocity, distance] = [0, 0];
  for (let index = 0; index < steps; index++) {
    const at = (index + 0.5) * step;
    const now = Math.min(highest, jerk * at, jerk * (time - at));
    distance += (velocity + (now * step) / 2) * step;
    velocity += now * step;
  }
  return { time, distance, highest };
}

/** Time of a move from stop to stop: the peak is found by halving. */
function moveSeconds(length: number, head: Head): number {
  const full = ramp(head.speed, head);
  if (2 * full.distance <= length) return 2 * full.time + (length - 2 * full.distance) / head.speed;
  let [low, high] = [0, head.speed];
  for (let halving = 0; halving < 40; halving++) {
    const middle = (low + high) / 2;
    if (2 * ramp(middle, head).distance > length) high = middle;
    else low = middle;
  }
  return 2 * ramp(low, head).time;
}

/** mm */
const longest = 250;
/** How many times as long as a move that touches the commanded speed the longest one is at least. */
const leastHeld = 4;

const kinds = ['steady ramps', 'slightly rounded', 'rounded', 'strongly rounded'] as const;

/** Share of the steady ramp to the top speed that its rounding takes. */
const roundingShares = { 'steady ramps': 0, 'slightly rounded': 0.1, rounded: 0.35, 'strongly rounded': 0.8 };

function between(random: RandomSource, low: number, high: number): number {
  return low + (high - low) * random.uniform();
}

/** Times of moves of an invented machine by a stop watch in the hand, laid out as a plan does. */
export function simulateMotion(index: number, noise?: RandomSource): SimulatedBench {
  const random = randomSource(`motion ${index}`);
  const { normal } = noise ?? random;
  const kind = kinds[index % kinds.length] ?? 'steady ramps';
  const asked = Math.round(between(random, 120, 600));
  const most = between(random, 1000, 13000);
  const commanded = {
    speed: Math.min(asked, Math.floor(Math.sqrt((most * longest) / leastHeld))),
    acceleration: most,
  };
  const capped = (value: number, chance: number) =>
    random.uniform() < chance ? value * between(random, 0.6, 0.98) : value;
  const speed = capped(commanded.speed, 0.4);
  const acceleration = capped(commanded.acceleration, 0.5);
  const rounding = (roundingShares[kind] * between(random, 0.6, 1.4) * speed) / acceleration;
  const [pause, scatter, late] = [
    between(random, 0, 0.03),
    between(random, 0.03, 0.18),
    between(random, -0.1, 0.1),
  ];
  const columns = {
    moveLength: [],
    commandedSpeed: [],
    moves: [],
    duration: [],
    positionShift: [],
  } as Record<string, number[]>;
  const touch = commanded.speed ** 2 / commanded.acceleration;
  const shares = [0.1, 0.2, 0.4, 0.8, 2, 4, 8];
  const lengths = [
    ...new Set(shares.map((share) => Math.round(Math.max(1, Math.min(longest, share * touch))))),
  ];
  for (const asked of [commanded.speed / 2, commanded.speed]) {
    for (const length of lengths.flatMap((each) => [each, each])) {
      const guess = length / asked + asked / commanded.acceleration;
      const moves = Math.max(10, Math.round(40 / guess / 10) * 10);
      const each = pause + moveSeconds(length, { speed: Math.min(asked, speed), acceleration, rounding });
      columns.moveLength?.push(length);
      columns.commandedSpeed?.push(asked);
      columns.moves?.push(moves);
      columns.positionShift?.push(Math.round(2 * normal()) / 100);
      columns.duration?.push(Math.round(100 * (moves * each + late + scatter * normal())) / 100);
    }
  }
  return {
    kind,
    columns,
    run: { commandedAcceleration: commanded.acceleration },
    truths: {
      reachedSpeed: speed,
      reachedAcceleration: ramp(speed, { speed, acceleration, rounding }).highest,
      turnPause: pause,
    },
  };
}
