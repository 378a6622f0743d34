import { describe, expect, it } from 'vitest';
import { proposedChangeset } from '../../scripts/release/proposed-changeset.ts';
import { diffRegistries } from '../../src/decisions/diff/diff-registries.ts';
import { loadFolders } from '../../src/host/load-registry.ts';
import { type SampleRegistry, sampleRegistry } from '../sample-registry.ts';

const nothing = { profiles: [], schema: { added: [], breaking: [] }, rules: { added: [], removed: [] } };
const hook = 'jobs/hook.yaml';

function proposalFor(change: (registry: SampleRegistry) => void, version = '1.2.0'): string | null {
  const registry = sampleRegistry();
  const base = loadFolders(['profiles'], registry.cwd);
  change(registry);
  const { profiles } = diffRegistries(base, loadFolders(['profiles'], registry.cwd));
  return proposedChangeset({ ...nothing, profiles }, version);
}

describe('the changeset that is proposed', () => {
  it('is a patch for corrected values', () => {
    const text = proposalFor((registry) => {
      registry.edit(hook, 'version: 1.0.0', 'version: 1.0.1');
      registry.edit(hook, 'Coat hook', 'Hat hook');
    });
    expect(text).toBe('---\n"meltbounds": patch\n---\n\nCorrected values: job hook 1.0.1.\n');
  });

  describe('for a limit that goes down', () => {
    const lower = (registry: SampleRegistry) => {
      const daisy = 'filaments/oakhollow/daisy-pla.yaml';
      registry.edit(daisy, 'value: 26 mm3/s', 'value: 24 mm3/s');
      registry.edit(daisy, 'version: 1.0.0', 'version: 2.0.0');
    };
    const change =
      'Corrected values: Major: filament oakhollow/daisy-pla 2.0.0 (meltFlow (plumstead/wren, hs-0.6, 230 Cel, batch 26-0001) 26 mm3/s → 24 mm3/s, meltFlow (plumstead/wren, hs-0.6, 230 Cel) 26 mm3/s → 24 mm3/s). Tables made by the old version are too fast, or gone.';

    it('is major, with the warning that `diff` prints', () => {
      expect(proposalFor(lower)).toBe(`---\n"meltbounds": major\n---\n\n${change}\n`);
    });

    it('is minor before 1.0.0, and says that the change is major', () => {
      expect(proposalFor(lower, '0.4.0')).toBe(`---\n"meltbounds": minor\n---\n\n${change}\n`);
    });
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
    expect(text).toBe(
      '---\n"meltbounds": major\n---\n\nAdded: job peg 1.0.0.\n\nRemoved: Major: job hook 1.0.0.\n',
    );
  });

  it('is major for another shape, minor for new fields and rules', () => {
    const schema = { added: ['filament/tint'], breaking: [] };
    expect(proposedChangeset({ ...nothing, schema }, '1.2.0')).toBe(
      '---\n"meltbounds": minor\n---\n\nSchema: new filament/tint.\n',
    );
    const breaking = { added: [], breaking: ['filament/tint is gone'] };
    expect(proposedChangeset({ ...nothing, schema: breaking }, '1.2.0')).toContain('"meltbounds": major');
    const rules = { added: ['units/slip'], removed: [] };
    expect(proposedChangeset({ ...nothing, rules }, '1.2.0')).toContain('Rules: new `units/slip`.');
  });

  it('is none where nothing has changed', () => {
    expect(proposalFor(() => undefined)).toBeNull();
  });
});
