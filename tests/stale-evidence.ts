import { type SampleRegistry, sampleRegistry } from './sample-registry.ts';

/** The trials that the tables of the sample pairing rest on. */
const trials = ['trials/2026/wren-daisy-pla-215.yaml', 'trials/2026/wren-daisy-pla-230.yaml'];

/** Why the trials acknowledge their old firmware, and until when. */
export const reason = 'Only the screen changed';
export const lastDay = '2026-12-31';

/** The sample registry with trials of Daisy PLA that were run with old firmware; acknowledged by them if asked for. */
export function staleEvidence(options: { readonly acknowledged: boolean }): SampleRegistry {
  const registry = sampleRegistry();
  for (const trial of trials) {
    registry.edit(trial, 'firmware: 1.3.0', 'firmware: 1.1.0');
    if (!options.acknowledged) continue;
    const entry = `{rule: evidence/stale-firmware, at: /firmware, found: 1.1.0, reason: ${reason}, until: '${lastDay}'}`;
    registry.write(trial, `${registry.read(trial)}acknowledged:\n  - ${entry}\n`);
  }
  return registry;
}
