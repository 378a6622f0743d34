import { beadArea } from '../physics/bead.ts';
import type { Machine } from '../registry/generated/documents.ts';
import { nozzlesOf } from '../registry/nozzle.ts';
import type { SquareMillimetres } from '../units/canonical.ts';

/** The smallest bead in use, as shares of the nozzle's diameter (common practice, no source). */
const smallestLayer = 0.25;
const usualWidth = 1.1;

/** Cross-section of the smallest usual bead of the finest nozzle of a machine, in mm²; null where it has no nozzle. */
export function smallestBead(machine: Machine): SquareMillimetres | null {
  const diameters = nozzlesOf(machine).map(({ nozzle }) => nozzle.diameter);
  if (diameters.length === 0) return null;
  const diameter = Math.min(...diameters);
  return beadArea(smallestLayer * diameter, usualWidth * diameter);
}
