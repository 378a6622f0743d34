import type {
  Count,
  Millimetres,
  MillimetresPerSecond,
  MillimetresPerSecondSquared,
  Seconds,
} from '../units/canonical.ts';
import { type Corner, cornerSpeed } from './corner.ts';
import { speedProfile } from './speed-profile.ts';

/** Where in the part a path lies: in its first layer, in those above it, or spread evenly over all. */
export type PathPlace = 'firstLayer' | 'layersAbove' | 'allLayers';

/** All paths of one kind in a print. */
export interface PrintPath {
  readonly length: Millimetres;
  /** Mean length between two corners or stops; the model takes every stretch to be that long. */
  readonly meanSegment: Millimetres;
  /** Commanded speed. */
  readonly speed: MillimetresPerSecond;
  readonly acceleration: MillimetresPerSecondSquared;
  /** The corner between two stretches; null where the head stops at each end. */
  readonly corner: Corner | null;
  /** Time that each stretch costs besides its way. */
  readonly pause: Seconds;
  readonly place: PathPlace;
}

/** Time of all paths of one kind. */
export interface PathTime {
  /** At the commanded speed. */
  readonly cruise: Seconds;
  /** Below the commanded speed, speeding up and slowing down. */
  readonly ramps: Seconds;
  readonly pauses: Seconds;
  /** Highest speed that the head really reaches. */
  readonly peak: MillimetresPerSecond;
}

/** A print as the time model sees it. */
export interface PrintPlan<Name extends string> {
  readonly layers: Count;
  readonly paths: ReadonlyMap<Name, PrintPath>;
  /** Time from the end of a layer to the beginning of the next. */
  readonly layerChange: Seconds;
  /** No layer may take less; 0 where the plastic needs no time to cool. */
  readonly shortestLayerTime: Seconds;
}

/** Time of a print: heating up, homing and levelling are not in it. */
export interface PrintTime<Name extends string> {
  readonly total: Seconds;
  readonly paths: ReadonlyMap<Name, PathTime>;
  readonly layerChanges: Seconds;
  /** What the layers lack to the shortest layer time, all together. */
  readonly coolingWait: Seconds;
}

/**
 * Time of all paths of one kind: as many stretches as the mean segment goes into the length, each a speed profile
 * from corner to corner. Equal stretches: where they differ much, long ones gain less than short ones lose.
 */
export function pathTime(path: PrintPath): PathTime {
  if (path.length <= 0) return { cruise: 0, ramps: 0, pauses: 0, peak: 0 };
  const length = Math.min(path.meanSegment, path.length);
  const ends = path.corner === null ? 0 : cornerSpeed(path.corner, path.acceleration);
  const { speed, acceleration } = path;
  const { cruise, ramps, peak } = speedProfile({
    length,
    speed,
    acceleration,
    entrySpeed: ends,
    exitSpeed: ends,
  });
  const stretches = path.length / length;
  return { cruise: stretches * cruise, ramps: stretches * ramps, pauses: stretches * path.pause, peak };
}

/**
 * Time of a print, in s: its paths, the changes of layer, and the wait in layers that are done before the plastic
 * holds its shape. The layers above the first share their paths evenly.
 * Source: sum of the parts; each part names its own.
 */
export function printTime<Name extends string>(plan: PrintPlan<Name>): PrintTime<Name> {
  const paths = new Map([...plan.paths].map(([name, path]): [Name, PathTime] => [name, pathTime(path)]));
  const inPlace = (place: PathPlace) =>
    sum([...paths].map(([name, time]) => (plan.paths.get(name)?.place === place ? secondsOf(time) : 0)));
  const layers = Math.max(1, plan.layers);
  const lack = (time: Seconds) => Math.max(0, plan.shortestLayerTime - time);
  const everywhere = inPlace('allLayers') / layers;
  const above = layers - 1;
  // A job of one layer has nothing above it: what it says of other layers lies in the one.
  const first = inPlace('firstLayer') + everywhere + (above === 0 ? inPlace('layersAbove') : 0);
  const other = above === 0 ? 0 : everywhere + inPlace('layersAbove') / above;
  const coolingWait = lack(first) + above * lack(other);
  const layerChanges = above * plan.layerChange;
  const total = sum([...paths.values()].map(secondsOf)) + layerChanges + coolingWait;
  return { total, paths, layerChanges, coolingWait };
}

/** All seconds of a kind of path, its pauses included. */
export function secondsOf({ cruise, ramps, pauses }: PathTime): Seconds {
  return cruise + ramps + pauses;
}

function sum(terms: readonly number[]): number {
  return terms.reduce((total, term) => total + term, 0);
}
