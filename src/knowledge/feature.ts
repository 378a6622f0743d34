import { features } from '../registry/generated/key-facts.ts';

export { features };

/** A path of a printed part. */
export type Feature = (typeof features)[number];

/** Whether the nozzle delivers melt on this path; travel moves without. */
export function isPrinted(feature: Feature): boolean {
  return feature !== 'travel';
}
