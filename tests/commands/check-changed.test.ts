import { renameSync } from 'node:fs';
import { describe, expect, it, vi } from 'vitest';
import { commitAll, git } from '../git-repository.ts';
import { runCommand } from '../run-command.ts';
import { type SampleRegistry, sampleRegistry } from '../sample-registry.ts';

const daisy = 'filaments/oakhollow/daisy-pla.yaml';
const trial = 'trials/2026/wren-daisy-pla-215.yaml';
const readings = 'trials/2026/wren-daisy-pla-230.csv';
const hook = 'jobs/hook.yaml';
const house = 'policies/house.yaml';

/** The sample registry with a fault in the house rules, all of it committed. */
function committed(): SampleRegistry {
  const registry = sampleRegistry();
  registry.edit(house, 'acceptedDeficit: 5 %', 'acceptedDeficit: 5');
  commitAll(registry.cwd, 'Start');
  return registry;
}

async function filesChecked(registry: SampleRegistry, ...args: string[]) {
  const { out, err, status } = await runCommand(registry.cwd, [
    'check',
    '--changed',
    'HEAD',
    '--format',
    'junit',
    ...args,
  ]);
  const files = [...out.matchAll(/<testcase name="profiles\/([^"]*)"/g)].map(([, file]) => file);
  return { files, status, err };
}

describe('--changed', () => {
  it('reports nothing where nothing has changed, whatever is wrong elsewhere', async () => {
    const { out, status } = await runCommand(committed().cwd, ['check', '--changed', 'HEAD']);
    expect({ out, status }).toEqual({ out: '0 profiles: no problems found.\n', status: 0 });
  });

  it('reports a changed profile', async () => {
    const registry = committed();
    registry.edit(hook, 'Coat hook', 'Hat hook');
    expect(await filesChecked(registry)).toEqual({ files: [hook], status: 0, err: '' });
  });

  it('reports both files that share an id, whichever of them is new', async () => {
    const registry = committed();
    registry.write('jobs/awning.yaml', registry.read(hook));
    expect((await filesChecked(registry)).files).toEqual(['jobs/awning.yaml', hook]);
  });

  it('reports what is staged, and what is new and not', async () => {
    const registry = committed();
    registry.write('jobs/peg.yaml', registry.read(hook).replace('id: hook', 'id: peg'));
    registry.edit(hook, 'Coat hook', 'Hat hook');
    git(registry.cwd, 'add', `profiles/${hook}`);
    expect((await filesChecked(registry)).files).toEqual([hook, 'jobs/peg.yaml']);
  });

  it('reports the filament whose limit cites a changed trial', async () => {
    const registry = committed();
    registry.edit(trial, '[22, 400, 1.173]', '[22, 400, 0.773]');
    const { files, status } = await filesChecked(registry);
    expect(files).toEqual(expect.arrayContaining([trial, daisy]));
    expect(files).not.toContain(house);
    expect(status).toBe(1);
  });

  it('reports the trial and the filament of changed readings', async () => {
    const registry = committed();
    registry.edit(readings, '26,400,1.171', '26,400,1.172');
    expect((await filesChecked(registry)).files).toEqual(
      expect.arrayContaining([readings.replace('.csv', '.yaml'), daisy]),
    );
  });

  it('reports what depends on a deleted file', async () => {
    const registry = committed();
    registry.remove('sources/oakhollow-daisy-pla-sheet.yaml');
    const { files, status } = await filesChecked(registry);
    expect(files).toEqual(expect.arrayContaining([daisy, trial]));
    expect(status).toBe(1);
  });

  it('reports what depends on readings that are gone', async () => {
    const registry = committed();
    registry.remove(readings);
    const { files, status } = await filesChecked(registry);
    expect(files).toEqual(expect.arrayContaining([readings.replace('.csv', '.yaml'), daisy]));
    expect(status).toBe(1);
  });

  it('takes a moved file for a deleted and a new one', async () => {
    const registry = committed();
    renameSync(registry.path('polymers/PLA.yaml'), registry.path('polymers/PLAX.yaml'));
    expect((await filesChecked(registry)).files).toEqual(
      expect.arrayContaining(['polymers/PLAX.yaml', daisy]),
    );
  });

  it('reports a changed file that cannot be read', async () => {
    const registry = committed();
    registry.write(hook, 'kind: [');
    expect(await filesChecked(registry)).toMatchObject({ files: [hook], status: 1 });
  });

  it('compares with an older commit or a branch', async () => {
    const registry = committed();
    registry.edit(hook, 'Coat hook', 'Hat hook');
    git(registry.cwd, 'commit', '--quiet', '--all', '--message', 'Rename');
    const { out } = await runCommand(registry.cwd, ['check', '--changed', 'HEAD~1']);
    expect(out).toBe('1 profile: no problems found.\n');
    expect((await runCommand(registry.cwd, ['check', '--changed', 'main'])).out).toContain('0 profiles');
  });

  it('keeps to the paths asked for', async () => {
    const registry = committed();
    registry.edit(trial, '[22, 400, 1.173]', '[22, 400, 1.172]');
    expect((await filesChecked(registry, 'profiles/trials')).files).not.toContain(daisy);
  });
});

describe('--changed cannot run', () => {
  it.each([['nowhere'], ['--output=stolen'], ['-p'], [''], ['^HEAD'], ['HEAD..HEAD'], ['HEAD\n']])(
    'with %j, which is no commit',
    async (base) => {
      const { status, out, err } = await runCommand(committed().cwd, ['check', `--changed=${base}`]);
      expect({ status, out }).toEqual({ status: 2, out: '' });
      expect(err).toMatch(
        /^git knows no commit "[^\n]*" here\.\nName a branch, a tag or a commit, for instance: --changed main\n$/,
      );
    },
  );

  it('outside of a git repository', async () => {
    const { status, err } = await runCommand(sampleRegistry().cwd, ['check', '--changed', 'main']);
    expect(status).toBe(2);
    expect(err).toMatch(
      /^--changed asks git what has changed, but .* is not in a git repository\.\nBegin one with `git init`.*\n$/,
    );
  });

  it('without git', async () => {
    const registry = committed();
    vi.stubEnv('PATH', registry.cwd);
    const { status, err } = await runCommand(registry.cwd, ['check', '--changed', 'main']);
    vi.unstubAllEnvs();
    expect({ status, err }).toEqual({
      status: 2,
      err: '--changed asks git what has changed, and git is not installed.\nInstall it.\n',
    });
  });
});
