import { loadRegistry } from '../../src/host/load-registry.ts';
import { checkRegistry } from '../../src/rules/engine/check-registry.ts';
import { testDay } from '../run-command.ts';
import { type SampleRegistry, sampleRegistry } from '../sample-registry.ts';

/** A stretch of a file of the sample registry replaced by another, a line added below one, or a file copied and edited. */
export type Edit =
  | { readonly in: string; readonly from: string; readonly to: string }
  | { readonly in: string; readonly below: string; readonly add: string }
  | { readonly copy: string; readonly to: string; readonly edits: readonly (readonly [string, string])[] };

/** A slip in the sample registry, and everything that is found then. */
export interface Slip {
  readonly slip: string;
  readonly edits: readonly Edit[];
  readonly found: readonly string[];
}

/** What comes near a slip and is none: nothing is found. */
export interface NearMiss {
  readonly nearMiss: string;
  readonly edits: readonly Edit[];
}

/** Everything that is found in the sample registry after some edits: `SEVERITY CODE FILE | LINE`, the line without its indentation. */
export function findingsAfter(edits: readonly Edit[]): string[] {
  const registry = sampleRegistry();
  for (const edit of edits) apply(edit, registry);
  const findings = checkRegistry(loadRegistry(['profiles'], registry.cwd), { today: testDay });
  return findings.map(({ severity, rule, file, line }) => {
    const path = file.replace(/^profiles\//, '');
    return `${severity} ${rule} ${path} | ${registry.read(path).split('\n')[line - 1]?.trim()}`;
  });
}

function apply(edit: Edit, registry: SampleRegistry): void {
  if ('copy' in edit) {
    registry.write(edit.to, registry.read(edit.copy));
    for (const [from, to] of edit.edits) registry.edit(edit.to, from, to);
  } else if ('add' in edit) {
    registry.edit(edit.in, `${edit.below}\n`, `${edit.below}\n${edit.add}\n`);
  } else {
    registry.edit(edit.in, edit.from, edit.to);
  }
}

export const clover = 'filaments/oakhollow/clover-petg.yaml';
export const daisy = 'filaments/oakhollow/daisy-pla.yaml';
export const wren = 'machines/plumstead/wren.yaml';
export const cloverTrial = 'trials/2026/wren-clover-petg-245.yaml';
export const daisyTrial = 'trials/2026/wren-daisy-pla-230.yaml';
export const petg = 'polymers/PET-G.yaml';
export const pla = 'polymers/PLA.yaml';
export const house = 'policies/house.yaml';
export const hook = 'jobs/hook.yaml';
export const tables = 'sources/invented-plastics-tables.yaml';
