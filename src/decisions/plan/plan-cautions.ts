import { tableCautions } from '../../knowledge/cautions.ts';
import type { Polymer } from '../../registry/generated/documents.ts';

/** What stands below every plan: the usual dangers, and what the profiles of the families say. */
export function planCautions(families: readonly Polymer[]): string[] {
  return [
    'Stay with the machine for the whole run; keep birds, children and anything that burns away from it.',
    ...new Set([...tableCautions, ...families.flatMap((family) => family.cautions ?? [])]),
  ];
}

/** What lies at hand before a run that feeds hot melt. */
export const benchKit: readonly string[] = [
  'heat-proof gloves and eye protection; ventilation or extraction that runs',
  'tweezers and flush cutters; a metal bucket for purged melt',
  'room thermometer, best with a hygrometer; calipers for the strand; a marker and a steel rule',
];
