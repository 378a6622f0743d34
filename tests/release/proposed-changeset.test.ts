import { describe, expect, it } from 'vitest';
import { proposedChangeset } from '../../scripts/release/proposed-changeset.ts';
import { diffRegistries } from '../../src/decisions/diff/diff-registries.ts';
import { loadFolders } from '../../src/host/load-registry.ts';
import { type SampleRegistry, sampleRegistry } from '../sample-registry.ts';

const nothing = { profiles: [], schema: { added: [], breaking: [] }, rules: { added: [], removed: [] } };
const hook = 'jobs/hook.yaml';

function proposalFor(change: (registry: SampleRegistry) => void): string | null {
  const registry = sampleRegistry();
  const base = loadFolders(['profiles'], registry.cwd);
  change(registry);
  const { profiles } = diffRegistries(base, loadFolders(['profiles'], registry.cwd));
  return proposedChangeset({ ...nothing, profiles });
}

describe('the changeset that is proposed', () => {
  it('is a patch for corrected values, even where the profile itself takes a major version', () => {
    const daisy = 'filaments/oakhollow/daisy-pla.yaml';
    const text = proposalFor((registry) => {
      registry.edit(daisy, 'value: 26 mm3/s', 'value: 24 mm3/s');
      registry.edit(daisy, 'version: 1.0.0', 'version: 2.0.0');
    });
    expect(text).toBe(
      '---\n"meltbounds": patch\n---\n\nCorrected values: filament oakhollow/daisy-pla 2.0.0 (meltFlow (plumstead/wren, hs-0.6, 230 Cel, batch 26-0001) 26 mm3/s → 24 mm3/s, meltFlow (plumstead/wren, hs-0.6, 230 Cel) 26 mm3/s → 24 mm3/s).\n',
    );
  });

  it('is minor for a new entry', () => {
    const text = proposalFor((registry) =>
      registry.write('jobs/peg.yaml', registry.read(hook).replace('id: hook', 'id: peg')),
    );
    expect(text).toBe('---\n"meltbounds": minor\n---\n\nAdded: job peg 1.0.0.\n');
  });

  it('is major for an id that is gone or another', () => {
    const text = proposalFor((registry) => {
      registry.write('jobs/peg.yaml', registry.read(hook).replace('id: hook', 'id: peg'));
      registry.remove(hook);
    });
    expect(text).toBe('---\n"meltbounds": major\n---\n\nAdded: job peg 1.0.0.\n\nRemoved: job hook 1.0.0.\n');
  });

  it('is major for another shape, minor for new fields and rules', () => {
    const schema = { added: ['filament/tint'], breaking: [] };
    expect(proposedChangeset({ ...nothing, schema })).toBe(
      '---\n"meltbounds": minor\n---\n\nSchema: new filament/tint.\n',
    );
    const breaking = { added: [], breaking: ['filament/tint is gone'] };
    expect(proposedChangeset({ ...nothing, schema: breaking })).toContain('"meltbounds": major');
    const rules = { added: ['units/slip'], removed: [] };
    expect(proposedChangeset({ ...nothing, rules })).toContain('Rules: new `units/slip`.');
  });

  it('is none where nothing has changed', () => {
    expect(proposalFor(() => undefined)).toBeNull();
  });
});
