import type { FillerMaterial } from './filler-symbol.ts';
import {
  fillerHardness,
  type HardnessRange,
  type NozzleMaterial,
  nozzleHardness,
  type VickersHardness,
} from './hardness.ts';

/** How fast a filler grinds a wall: hardly, somewhere in the steep transition, or as fast as a much harder grit would. */
export type Abrasion = 'mild' | 'transition' | 'severe';

const MILD_BELOW_RATIO = 1.1;
const SEVERE_ABOVE_RATIO = 1.2;

/**
 * Judges abrasion by the ratio of the Vickers hardness of filler and nozzle: mild below about 1.1, severe above about 1.2.
 * Source: Richardson, The wear of metals by relatively soft abrasives, Wear 11 (1968) 245-275;
 * Zum Gahr, Microstructure and Wear of Materials (1987). Both from memory; some authors let wear set in from 0.7 on.
 */
export function abrasion(filler: VickersHardness, nozzle: VickersHardness): Abrasion {
  const ratio = filler / nozzle;
  if (ratio < MILD_BELOW_RATIO) {
    return 'mild';
  }
  return ratio > SEVERE_ABOVE_RATIO ? 'severe' : 'transition';
}

/**
 * Judges abrasion of a nozzle material by a filler material, by the middle of what each is known by;
 * `undefined` if the filler's hardness is not known. Source: as `abrasion`; hardness ranges with each material.
 */
export function abrasionOfNozzle(filler: FillerMaterial, nozzle: NozzleMaterial): Abrasion | undefined {
  const range = fillerHardness(filler);
  return range && abrasion(middleOf(range), middleOf(nozzleHardness[nozzle]));
}

function middleOf(range: HardnessRange): VickersHardness {
  return (range.low + range.high) / 2;
}
