import { tableCautions } from '../../knowledge/cautions.ts';
import type { Polymer } from '../../registry/generated/documents.ts';

/** What stands below every plan: the usual dangers, and what the profiles of the families say. */
export function planCautions(families: readonly Polymer[]): string[] {
  return [
    'Stay with the machine for the whole run; keep birds, children and anything that burns away from it.',
    ...new Set([...tableCautions, ...families.flatMap((family) => family.cautions ?? [])]),
  ];
}
