import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { diffRegistries, type RegistryDiff } from '../../../src/decisions/diff/diff-registries.ts';
import { loadFolders } from '../../../src/host/load-registry.ts';
import { runs } from '../../property-runs.ts';
import { type SampleRegistry, sampleRegistry } from '../../sample-registry.ts';

const daisy = 'filaments/oakhollow/daisy-pla.yaml';
const clover = 'filaments/oakhollow/clover-petg.yaml';
const wren = 'machines/plumstead/wren.yaml';
const house = 'policies/house.yaml';
const hook = 'jobs/hook.yaml';
const ladder = 'trials/2026/wren-daisy-pla-215.yaml';
const sheet = 'trials/2026/wren-daisy-pla-230.csv';

/** What a change of the sample registry means. */
function diffOf(change: (registry: SampleRegistry) => void): RegistryDiff {
  const registry = sampleRegistry();
  const base = loadFolders(['profiles'], registry.cwd);
  change(registry);
  return diffRegistries(base, loadFolders(['profiles'], registry.cwd));
}

/** What one edit of one profile means. */
function edited(file: string, from: string, to: string) {
  const { profiles, tables, findings } = diffOf((registry) => registry.edit(file, from, to));
  return { profile: profiles[0], count: profiles.length, tables, findings };
}

describe('the difference of a registry with itself', () => {
  it('is empty, for the demo registry too', () => {
    for (const folder of ['profiles', 'tests/fixtures/registry']) {
      const tables = { added: [], removed: [], moves: [], settings: [] };
      const empty = {
        profiles: [],
        tables,
        bump: null,
        origin: { simulated: [], invented: [] },
        findings: [],
      };
      expect(diffRegistries(loadFolders([folder]), loadFolders([folder]))).toEqual(empty);
    }
  });

  it('has a fall where a lower limit of another batch comes, which tables take too', () => {
    const { profiles } = diffOf((registry) => {
      registry.edit(
        daisy,
        '  - value: 26 mm3/s\n',
        '  - {value: 19 mm3/s, basis: measured, evidence: wren-daisy-pla-230, at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 230 Cel, batch: B}}\n  - value: 26 mm3/s\n',
      );
    });
    const [fallen] = profiles
      .flatMap(({ changes }) => changes)
      .filter(({ conditions }) => conditions.batch === undefined);
    expect(fallen).toMatchObject({
      base: { value: 26 },
      head: { value: 19, isSimulated: true },
      bump: 'major',
    });
  });

  it('is empty whatever the spelling and the comments', () => {
    const { profiles } = diffOf((registry) => {
      registry.edit(daisy, '22 mm3/s', '22.0 mm³/s');
      registry.edit(daisy, '# Both ladders on the same spool.', '# One spool.');
      registry.edit(daisy, 'spoolMass: 1 kg', 'spoolMass: 1000 g');
    });
    expect(profiles).toEqual([]);
  });
});

describe('the bump that a profile needs', () => {
  it.each([
    ['a limit that goes down', daisy, 'value: 22 mm3/s', 'value: 21 mm3/s', 'major'],
    ['a limit that goes up', daisy, 'value: 22 mm3/s', 'value: 23 mm3/s', 'minor'],
    ['a hot end that may be less hot', wren, '290 Cel', '280 Cel', 'major'],
    ['a bed range that narrows', daisy, '50..60 Cel', '55..60 Cel', 'major'],
    ['a bed range that widens', daisy, '50..60 Cel', '45..60 Cel', 'minor'],
    ['a longer shortest layer time', daisy, 'value: 5 s', 'value: 6 s', 'major'],
    ['a shorter shortest layer time', daisy, 'value: 5 s', 'value: 4 s', 'minor'],
    ['another density', daisy, '1.24 g/cm3', '1.25 g/cm3', 'minor'],
    [
      'a nozzle that is gone',
      wren,
      '      - {id: hs-0.4, diameter: 0.4 mm, material: hardenedSteel}\n',
      '',
      'major',
    ],
    ['a nozzle of another diameter', wren, 'diameter: 0.4 mm', 'diameter: 0.5 mm', 'major'],
    ['a chamber that has lost its sensor', wren, 'sensed: true', 'sensed: false', 'major'],
    ['a chamber that has got a heater', wren, 'heated: false', 'heated: true', 'minor'],
    ['another name', daisy, 'name: Daisy PLA', 'name: Daisy', 'patch'],
    ['another reason', daisy, 'reason: Bench habit', 'reason: Shop habit', 'patch'],
    ['a policy with a wider margin', house, 'flowMargin: 10 %', 'flowMargin: 12 %', 'major'],
  ])('for %s', (_, file, from, to, bump) => {
    expect(edited(file, from, to).profile?.bump).toBe(bump);
  });

  it('is major for a limit that goes down, minor for one that goes up, by however little', () => {
    const registry = sampleRegistry();
    const base = loadFolders(['profiles'], registry.cwd);
    const text = registry.read(daisy);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 44_000 }), (thousandths) => {
        const flow = thousandths / 1000;
        registry.write(daisy, text.replace('value: 22 mm3/s', `value: ${flow} mm3/s`));
        const diff = diffRegistries(base, loadFolders(['profiles'], registry.cwd));
        expect(diff.bump).toBe(flow < 22 ? 'major' : flow > 22 ? 'minor' : null);
      }),
      { numRuns: runs(25) },
    );
  });

  it('is major for a measured limit below the claim that tables went by until now', () => {
    const { profile } = edited(
      wren,
      '    meltFlow:\n',
      '    meltFlow:\n      - {value: 20 mm3/s, basis: measured, evidence: wren-clover-petg-245, at: {nozzle: hs-0.6, polymer: PLA, nozzleTemperature: 230 Cel}}\n',
    );
    expect(profile?.bump).toBe('major');
    expect(profile?.changes).toMatchObject([
      {
        name: 'hotEnds/main/meltFlow',
        base: { value: 32, basis: 'claimed' },
        head: { value: 20, basis: 'measured' },
      },
    ]);
  });

  it('is major for a new limit that slows tables which nothing had bounded there', () => {
    const { profile, tables } = edited(
      daisy,
      'meltFlow:\n',
      'contourSpeed:\n  - {value: 20 mm/s, basis: assumed, reason: Bench habit}\nmeltFlow:\n',
    );
    expect(profile).toMatchObject({ bump: 'major', slowsTables: true, neededVersion: '2.0.0' });
    expect(tables.moves[0]).toMatchObject({ head: { feature: 'outerContour', bound: 'quality' } });
  });

  it('is a patch for a lower claim where a measured limit counts', () => {
    const claim = (flow: number) =>
      `meltFlow:
  - value: ${flow} mm3/s
    basis: claimed
    source: oakhollow-daisy-pla-sheet
    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 230 Cel}
`;
    const registry = sampleRegistry();
    registry.edit(daisy, 'meltFlow:\n', claim(34));
    const base = loadFolders(['profiles'], registry.cwd);
    registry.edit(daisy, 'value: 34', 'value: 33');
    const [profile] = diffRegistries(base, loadFolders(['profiles'], registry.cwd)).profiles;
    expect(profile).toMatchObject({ bump: 'patch', slowsTables: false });
  });
});

describe('versions', () => {
  it('that have not moved far enough are errors, which name the version that would do', () => {
    const { findings } = edited(daisy, 'value: 22 mm3/s', 'value: 21 mm3/s');
    expect(findings).toMatchObject([
      {
        rule: 'diff/version-too-small',
        severity: 'error',
        file: `profiles/${daisy}`,
        pointer: '/version',
        found: '1.0.0',
        allowed: '2.0.0 or above',
        help: 'Write `version: 2.0.0`.',
      },
    ]);
  });

  it.each(['2.0.0', '2.1.0', '7.0.0'])('that have, such as %s, are fine', (version) => {
    const { findings } = diffOf((registry) => {
      registry.edit(daisy, 'value: 22 mm3/s', 'value: 21 mm3/s');
      registry.edit(daisy, 'version: 1.0.0', `version: ${version}`);
    });
    expect(findings).toEqual([]);
  });

  it('never go back', () => {
    const { findings } = edited(daisy, 'version: 1.0.0', 'version: 0.9.0');
    expect(findings).toMatchObject([{ rule: 'diff/version-too-small', allowed: '1.0.0 or above' }]);
    expect(findings[0]?.message).toContain('never goes back');
  });
});

describe('records', () => {
  it('whose readings have changed are errors', () => {
    const { findings } = edited(ladder, '[22, 400, 1.173]', '[22, 400, 1.172]');
    expect(findings).toMatchObject([{ rule: 'diff/record-changed', pointer: '/observations' }]);
  });

  it('whose sheet has changed are errors', () => {
    const { findings, profile } = edited(sheet, '26,400,1.171', '26,400,1.172');
    expect(findings).toMatchObject([
      { rule: 'diff/record-changed', file: expect.stringMatching(/230\.yaml$/) },
    ]);
    expect(profile?.changes).toMatchObject([{ name: 'observations/sheet' }]);
  });

  it('whose sheet has other line ends are the same', () => {
    const { profiles } = diffOf((registry) =>
      registry.write(sheet, registry.read(sheet).replaceAll('\n', '\r\n')),
    );
    expect(profiles).toEqual([]);
  });

  it('may be remarked on', () => {
    const { findings, profile } = edited(ladder, 'notice: ', 'notice: Once more. ');
    expect(findings).toEqual([]);
    expect(profile?.bump).toBe('patch');
  });
});

describe('profiles that come and go', () => {
  it('are a minor and a major change', () => {
    const diff = diffOf((registry) => {
      registry.write('jobs/peg.yaml', registry.read(hook).replace('id: hook', 'id: peg'));
      registry.remove(hook);
    });
    expect(diff.profiles).toMatchObject([
      { kind: 'job', id: 'hook', status: 'removed', bump: 'major', version: { base: '1.0.0', head: null } },
      { kind: 'job', id: 'peg', status: 'added', bump: 'minor', version: { base: null, head: '1.0.0' } },
    ]);
    expect(diff.findings).toEqual([]);
  });

  it('are the same in another file', () => {
    const { profiles } = diffOf((registry) => {
      registry.write('jobs/elsewhere.yaml', registry.read(hook));
      registry.remove(hook);
    });
    expect(profiles).toEqual([]);
  });

  it('bring tables and take them along', () => {
    const { tables } = diffOf((registry) => registry.remove(daisy));
    expect(tables.removed.map(({ filament }) => filament)).toContain('oakhollow/daisy-pla');
    expect(tables.moves).toEqual([]);
  });
});

describe('the cells that move', () => {
  it('are those of the pairings of the profile, the slower and larger first', () => {
    const { tables } = edited(daisy, 'value: 26 mm3/s', 'value: 20 mm3/s');
    expect(tables.moves.length).toBeGreaterThan(0);
    for (const { filament, base, head } of tables.moves) {
      expect(filament).toBe('oakhollow/daisy-pla');
      expect(head?.speed).toBeLessThanOrEqual(base?.speed ?? 0);
    }
    const shares = tables.moves.map(({ base, head }) => (head?.speed ?? 0) / (base?.speed ?? 1));
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
  });

  it('are none where no table rests on the change', () => {
    expect(edited(clover, 'name: Clover PETG', 'name: Clover').tables.moves).toEqual([]);
  });
});

describe('the settings that differ', () => {
  it('are those of the tables of the profile, with their unit', () => {
    const { tables } = edited(daisy, '50..60 Cel', '52..60 Cel');
    expect(tables.settings).not.toEqual([]);
    for (const move of tables.settings) {
      expect(move).toMatchObject({
        filament: 'oakhollow/daisy-pla',
        setting: 'bedTemperature',
        unit: 'Cel',
        base: { low: 50, high: 60 },
        head: { low: 52, high: 60 },
      });
    }
  });

  it('are none where only a speed moves', () => {
    expect(edited(wren, '430 mm/s', '440 mm/s').tables.settings).toEqual([]);
  });
});

describe('what cannot be read', () => {
  it('is an error where it is new', () => {
    const { profile, findings } = edited(daisy, 'value: 22 mm3/s', 'value: 22');
    expect(profile).toMatchObject({ status: 'unjudged', bump: null });
    expect(findings).toMatchObject([{ rule: 'diff/unjudged', severity: 'error', file: `profiles/${daisy}` }]);
  });

  it('is one too where not even its YAML can be read', () => {
    const { profile, findings } = edited(daisy, 'kind: filament', 'kind: [');
    expect(profile).toMatchObject({ kind: 'filament', id: 'oakhollow/daisy-pla', status: 'unjudged' });
    expect(findings).toMatchObject([{ rule: 'diff/unjudged' }]);
  });

  it('is said, and no error, where the change fixes it', () => {
    const registry = sampleRegistry();
    const whole = loadFolders(['profiles'], registry.cwd);
    registry.edit(daisy, 'value: 22 mm3/s', 'value: 22');
    const { profiles, findings } = diffRegistries(loadFolders(['profiles'], registry.cwd), whole);
    expect(profiles).toMatchObject([{ id: 'oakhollow/daisy-pla', status: 'unjudged' }]);
    expect(findings).toEqual([]);
  });
});
