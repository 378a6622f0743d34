import { type RandomSource, randomSource } from '../src/statistics/random.ts';

/**
 * A print by small steps of time, to hold the time model against. Written apart from the model: stretches and corners
 * differ from one to the next, the layers are not alike, and the head is moved step by step, looking ahead for corners.
 */
export interface SimulatedPath {
  /** mm, over all layers. */
  readonly length: number;
  readonly meanSegment: number;
  /** mm/s and mm/s2. */
  readonly speed: number;
  readonly acceleration: number;
  /** Null: the head stops at each end of a stretch. In deg and mm. */
  readonly corner: { readonly deflection: number; readonly tolerance: number } | null;
  /** s after each stretch. */
  readonly pause: number;
  readonly firstLayer: 'only' | 'never' | 'as every other';
}

export interface SimulatedPrint {
  readonly layers: number;
  readonly paths: readonly SimulatedPath[];
  /** s */
  readonly layerChange: number;
  readonly shortestLayerTime: number;
}

/** s */
const step = 0.0002;

/** Time of a print in s; the same seed gives the same print. */
export function simulatePrint(print: SimulatedPrint, seed: string): number {
  const random = randomSource(seed);
  let total = 0;
  for (let layer = 0; layer < print.layers; layer += 1) {
    // Layers differ in size; all together they hold about the length of the job.
    const size = 1 + 0.2 * (2 * random.uniform() - 1);
    const taken = print.paths.reduce((sum, path) => {
      const share = shareOfLayer(path, layer, print.layers);
      return share === 0 ? sum : sum + walk(path, share * path.length * size, random);
    }, 0);
    total += Math.max(taken, print.shortestLayerTime) + (layer === 0 ? 0 : print.layerChange);
  }
  return total;
}

function shareOfLayer({ firstLayer }: SimulatedPath, layer: number, layers: number): number {
  if (firstLayer === 'as every other') return 1 / layers;
  if (firstLayer === 'only') return layer === 0 ? 1 : 0;
  return layer === 0 ? 0 : 1 / (layers - 1);
}

/** Time over a length of path: stretches of a gamma distribution, corners spread evenly about the typical one. */
function walk(path: SimulatedPath, length: number, random: RandomSource): number {
  const stretches: number[] = [];
  for (let laid = 0; laid < length; ) {
    const next = Math.min((path.meanSegment * random.gamma(4)) / 4, length - laid) + 1e-6;
    stretches.push(next);
    laid += next;
  }
  const ends = [0, ...stretches.slice(1).map(() => turningSpeed(path, random)), 0];
  // No corner faster than the stretch behind it lets the head slow down from it, nor than the one before lets it arrive.
  for (let at = stretches.length - 1; at >= 0; at -= 1) ends[at] = held(ends[at], ends[at + 1], at);
  for (let at = 0; at < stretches.length; at += 1) ends[at + 1] = held(ends[at + 1], ends[at], at);
  function held(own = 0, neighbour = 0, at = 0): number {
    return Math.min(own, Math.sqrt(neighbour ** 2 + 2 * path.acceleration * (stretches[at] ?? 0)));
  }
  return stretches.reduce(
    (sum, stretch, at) => sum + path.pause + run(path, stretch, ends[at] ?? 0, ends[at + 1] ?? 0),
    0,
  );
}

/** The head on the circle that leaves the corner by the tolerance: tan of a quarter turn gives its size. */
function turningSpeed({ corner, speed, acceleration }: SimulatedPath, random: RandomSource): number {
  if (corner === null) return 0;
  const turn = Math.min(175, corner.deflection * (0.5 + random.uniform()));
  const half = ((turn / 2) * Math.PI) / 180;
  // Corner to the touching point: tolerance / tan(half / 2); the radius is that over tan(half).
  const radius = corner.tolerance / Math.tan(half / 2) / Math.tan(half);
  return Math.min(speed, Math.sqrt(acceleration * radius));
}

/** One stretch by small steps: speed up, hold, brake in time for its end. */
function run(path: SimulatedPath, length: number, entry: number, exit: number): number {
  const { speed, acceleration } = path;
  let [time, gone, now] = [0, 0, Math.min(entry, speed)];
  while (gone < length) {
    const braking = (now ** 2 - exit ** 2) / (2 * acceleration);
    const wanted = braking >= length - gone ? exit : speed;
    const next =
      wanted < now
        ? Math.max(wanted, now - acceleration * step)
        : Math.min(wanted, now + acceleration * step);
    // A head that has braked a step too early creeps no slower than a step's worth of speed.
    const mean = Math.max((now + next) / 2, (acceleration * step) / 2);
    gone += mean * step;
    now = next;
    time += step;
  }
  return time;
}
