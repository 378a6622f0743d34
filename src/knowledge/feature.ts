import type { Policy } from '../registry/generated/documents.ts';

export type Feature = keyof Policy['fractions'];

/** The paths of a printed part, in the order in which tables list them. */
export const features = [
  'firstLayer',
  'outerContour',
  'innerContour',
  'infill',
  'topSurface',
  'bridge',
  'overhang',
  'travel',
] as const satisfies readonly Feature[];

/** Whether the nozzle delivers melt on this path; travel moves without. */
export function isPrinted(feature: Feature): boolean {
  return feature !== 'travel';
}
