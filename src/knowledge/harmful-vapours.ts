import type { Polymer } from '../registry/generated/documents.ts';

/** What law or medicine knows as toxic, carcinogenic or sensitising, given off at usual temperatures. */
const harmful: readonly NonNullable<Polymer['emissions']>[number][] = [
  'styrene',
  'acrylonitrile',
  'butadiene',
  'acrylates',
  'hydrogenCyanide',
  'caprolactam',
  'methylMethacrylate',
  'formaldehyde',
  'hydrogenChloride',
];

/** The harmful vapours that a family gives off, by name. */
export function vapoursOf({ emissions }: Polymer): string[] {
  return (emissions ?? []).filter((substance) => harmful.includes(substance));
}
