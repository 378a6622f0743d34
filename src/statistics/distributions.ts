import type { RandomSource } from './random.ts';

/** What is known of an input quantity, as the distributions of JCGM 101:2008, table 1. */
export type Distribution =
  | { readonly kind: 'normal'; readonly mean: number; readonly standardUncertainty: number }
  | { readonly kind: 'rectangular'; readonly low: number; readonly high: number }
  | { readonly kind: 'triangular'; readonly low: number; readonly high: number }
  | { readonly kind: 'arcsine'; readonly low: number; readonly high: number }
  | {
      readonly kind: 'studentT';
      readonly mean: number;
      readonly scale: number;
      readonly degreesOfFreedom: number;
    }
  | {
      readonly kind: 'curvilinearTrapezoid';
      readonly low: number;
      readonly high: number;
      /** Half the range within which each limit is known; at most half of high - low. */
      readonly limitUncertainty: number;
    };

/** Draws one value of the distribution, by the procedure of its clause in JCGM 101:2008, 6.4. */
export function draw(distribution: Distribution, random: RandomSource): number {
  switch (distribution.kind) {
    case 'normal':
      return distribution.mean + distribution.standardUncertainty * random.normal();
    case 'rectangular':
      return distribution.low + (distribution.high - distribution.low) * random.uniform();
    case 'triangular':
      return (
        distribution.low +
        ((distribution.high - distribution.low) / 2) * (random.uniform() + random.uniform())
      );
    case 'arcsine': {
      const middle = (distribution.low + distribution.high) / 2;
      return middle + ((distribution.high - distribution.low) / 2) * Math.sin(2 * Math.PI * random.uniform());
    }
    case 'studentT':
      return distribution.mean + distribution.scale * random.studentT(distribution.degreesOfFreedom);
    case 'curvilinearTrapezoid': {
      const shift = distribution.limitUncertainty * (2 * random.uniform() - 1);
      const low = distribution.low + shift;
      const high = distribution.high - shift;
      return low + (high - low) * random.uniform();
    }
    default:
      return distribution satisfies never;
  }
}
