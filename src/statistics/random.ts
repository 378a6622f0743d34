import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** A reproducible stream of random numbers; every call advances it. */
export interface RandomSource {
  /** Uniform on [0, 1). */
  uniform(): number;
  /** Standard normal. */
  normal(): number;
  /** Gamma with the given shape (> 0) and scale 1. */
  gamma(shape: number): number;
  /** Student's t with the given degrees of freedom (> 0). */
  studentT(degreesOfFreedom: number): number;
}

/** Opens the stream that belongs to `seed`: the same text gives the same numbers on every machine. */
export function randomSource(seed: string): RandomSource {
  const generator = xoroshiro128plus(hash(seed));
  const uniform = () => uniformFloat64(generator);
  const normal = polarNormal(uniform);
  const gamma = (shape: number) => marsagliaTsangGamma(shape, uniform, normal);
  const studentT = (degreesOfFreedom: number) =>
    normal() / Math.sqrt((2 * gamma(degreesOfFreedom / 2)) / degreesOfFreedom);
  return { uniform, normal, gamma, studentT };
}

/** 32-bit FNV-1a over UTF-16 code units (Fowler, Noll, Vo; IETF draft-eastlake-fnv). */
function hash(text: string): number {
  let state = 0x811c9dc5;
  for (let index = 0; index < text.length; index++) {
    state = Math.imul(state ^ text.charCodeAt(index), 0x01000193);
  }
  return state | 0;
}

/** Marsaglia's polar method (Knuth, The Art of Computer Programming, vol. 2, 3.4.1, algorithm P). */
function polarNormal(uniform: () => number): () => number {
  let spare: number | undefined;
  return () => {
    if (spare !== undefined) {
      const ready = spare;
      spare = undefined;
      return ready;
    }
    for (;;) {
      const first = 2 * uniform() - 1;
      const second = 2 * uniform() - 1;
      const square = first * first + second * second;
      if (square > 0 && square < 1) {
        const factor = Math.sqrt((-2 * Math.log(square)) / square);
        spare = second * factor;
        return first * factor;
      }
    }
  };
}

/** Marsaglia and Tsang, "A simple method for generating gamma variables", ACM TOMS 26 (2000) 363-372. */
function marsagliaTsangGamma(shape: number, uniform: () => number, normal: () => number): number {
  if (shape < 1) {
    return marsagliaTsangGamma(shape + 1, uniform, normal) * (1 - uniform()) ** (1 / shape);
  }
  const offset = shape - 1 / 3;
  const spread = 1 / Math.sqrt(9 * offset);
  for (;;) {
    const deviate = normal();
    const root = 1 + spread * deviate;
    const cube = root * root * root;
    if (cube > 0) {
      const square = deviate * deviate;
      const chance = 1 - uniform();
      // Within the squeeze of their paper nothing else needs to be asked; it spares most of the logarithms.
      if (chance < 1 - 0.0331 * square * square) return offset * cube;
      const bound = 0.5 * square + offset * (1 - cube + Math.log(cube));
      if (Math.log(chance) < bound) return offset * cube;
    }
  }
}
