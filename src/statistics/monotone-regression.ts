/**
 * Weighted least-squares fit of a non-decreasing sequence by pooling adjacent violators
 * (Barlow, Bartholomew, Bremner, Brunk, Statistical Inference under Order Restrictions, 1972, section 1.2).
 * Values in any unit, weights positive and as many as the values.
 */
export function nonDecreasingFit(values: readonly number[], weights: readonly number[]): number[] {
  if (values.length !== weights.length) throw new RangeError('one weight per value');
  const fit = new Float64Array(values.length);
  fitMonotone(new Pools(1), values, weights, fit);
  return [...fit];
}

/** Fits values that never fall, or with pools of the other sign never rise, into a room of their size. */
export function fitMonotone(
  pools: Pools,
  values: ArrayLike<number>,
  weights: readonly number[],
  fit: Float64Array,
): void {
  pools.restart(0).pushAll(values, weights, values.length);
  pools.putFit(fit);
}

/**
 * Weighted least-squares fit of values that rise and then fall: the best over all places of the peak of a rising and a
 * falling part (Frisén, "Unimodal regression", The Statistician 35 (1986) 479-485). One object serves many series with the
 * same weights.
 */
export class PeakedFit {
  readonly #weights: readonly number[];
  readonly #turnedWeights: readonly number[];
  readonly #turned: Float64Array;
  /** What the falling part leaves, by the place where it begins. */
  readonly #behind: Float64Array;
  readonly #rising = new Pools(1);
  readonly #falling = new Pools(-1);

  constructor(weights: readonly number[]) {
    this.#weights = weights;
    this.#turnedWeights = weights.toReversed();
    this.#turned = new Float64Array(weights.length);
    this.#behind = new Float64Array(weights.length + 1);
  }

  /** Fits as many values as there are weights into a room of their size; returns the position of the peak. */
  fit(values: Float64Array, into: Float64Array): number {
    const end = this.#bestPeak(values) + 1;
    this.#rising.restart(0).pushAll(values, this.#weights, end);
    this.#rising.putFit(into);
    this.#falling.restart(end).pushAll(values, this.#weights, values.length);
    this.#falling.putFit(into);
    return positionOfHighest(into);
  }

  #bestPeak(values: Float64Array): number {
    this.#lookBehind(values);
    const pools = this.#rising.restart(0);
    let least = Number.POSITIVE_INFINITY;
    let best = 0;
    for (let peak = 0; peak < values.length; peak++) {
      pools.push(values[peak] ?? Number.NaN, this.#weights[peak] ?? 0);
      const misfit = pools.misfit(values, this.#weights) + (this.#behind[peak + 1] ?? 0);
      if (misfit >= least) continue;
      least = misfit;
      best = peak;
    }
    return best;
  }

  /** From the end the falling part rises, so that it too grows by a value from one place of the peak to the next. */
  #lookBehind(values: Float64Array): void {
    const { length } = values;
    const pools = this.#rising.restart(0);
    for (let place = 0; place < length; place++) {
      this.#turned[place] = values[length - 1 - place] ?? Number.NaN;
      pools.push(this.#turned[place] ?? Number.NaN, this.#turnedWeights[place] ?? 0);
      this.#behind[length - 1 - place] = pools.misfit(this.#turned, this.#turnedWeights);
    }
  }
}

/** The place of the highest value, or the first of them. */
export function positionOfHighest(values: Float64Array): number {
  let best = 0;
  for (let place = 1; place < values.length; place++) {
    if ((values[place] ?? 0) > (values[best] ?? 0)) best = place;
  }
  return best;
}

/** Pools of neighbours that violate the order; in lists of their own, since a fit is asked for many thousand times. */
export class Pools {
  /** 1 for values that never fall, -1 for ones that never rise. */
  readonly #sign: 1 | -1;
  readonly #means: number[] = [];
  readonly #weights: number[] = [];
  /** The first place after each pool. */
  readonly #ends: number[] = [];
  /** How many pools there are; what the lists hold beyond is of no use any more. */
  #count = 0;
  #from = 0;
  #next = 0;

  constructor(sign: 1 | -1) {
    this.#sign = sign;
  }

  /** Begins anew at a place of the values. */
  restart(from: number): this {
    this.#count = 0;
    this.#from = from;
    this.#next = from;
    return this;
  }

  /** Takes the values up to a place, which stays out. */
  pushAll(values: ArrayLike<number>, weights: readonly number[], to: number): void {
    while (this.#next < to) this.push(values[this.#next] ?? Number.NaN, weights[this.#next] ?? 0);
  }

  /** Takes the next value, and pools it with those before as long as they violate the order. */
  push(value: number, ownWeight: number): void {
    if (!(ownWeight > 0)) throw new RangeError('weights must be positive');
    let mean = this.#sign * value;
    let weight = ownWeight;
    for (let last = this.#count - 1; last >= 0 && (this.#means[last] ?? 0) > mean; last--) {
      const before = this.#weights[last] ?? 0;
      mean = ((this.#means[last] ?? 0) * before + mean * weight) / (before + weight);
      weight += before;
      this.#count -= 1;
    }
    this.#next += 1;
    this.#means[this.#count] = mean;
    this.#weights[this.#count] = weight;
    this.#ends[this.#count] = this.#next;
    this.#count += 1;
  }

  /** The sum of squares that the fit leaves. */
  misfit(values: ArrayLike<number>, weights: readonly number[]): number {
    let sum = 0;
    let index = this.#from;
    for (let pool = 0; pool < this.#count; pool++) {
      const level = this.#sign * (this.#means[pool] ?? 0);
      for (; index < (this.#ends[pool] ?? 0); index++) {
        sum += (weights[index] ?? 0) * (level - (values[index] ?? 0)) ** 2;
      }
    }
    return sum;
  }

  /** Puts the fitted values into their places. */
  putFit(fit: Float64Array): void {
    let index = this.#from;
    for (let pool = 0; pool < this.#count; pool++) {
      const level = this.#sign * (this.#means[pool] ?? 0);
      for (; index < (this.#ends[pool] ?? 0); index++) fit[index] = level;
    }
  }
}
