import { renameSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { committedRegistry, git } from '../git-repository.ts';
import { runCommand, unwrapped } from '../run-command.ts';
import { sampleRegistry, temporaryFolder } from '../sample-registry.ts';

const daisy = 'filaments/oakhollow/daisy-pla.yaml';

/** A repository whose working tree has a lower limit in a profile, with the version moved or not. */
function changedRegistry(version = '1.0.0') {
  const registry = committedRegistry();
  registry.edit(daisy, 'value: 26 mm3/s', 'value: 24 mm3/s');
  if (version !== '1.0.0') registry.edit(daisy, 'version: 1.0.0', `version: ${version}`);
  return registry;
}

async function jsonOf(cwd: string, ...args: string[]) {
  const { out, status } = await runCommand(cwd, ['diff', ...args, '--format', 'json']);
  return { report: JSON.parse(out), status };
}

describe('diff of a branch and the working tree', () => {
  it('says what the change means and that the version has to move', async () => {
    const { status, out, err } = await runCommand(changedRegistry().cwd, ['diff', 'main']);
    expect({ status, err }).toEqual({ status: 1, err: '' });
    expect(out).toContain('1 profile differs, a major change.\n\nmain → the working tree\n');
    expect(out).toContain('filament oakhollow/daisy-pla: still 1.0.0, a major change: needs 2.0.0');
    expect(out).toMatch(
      /\n {2}major {2}meltFlow {2,}26 mm³\/s {2}24 mm³\/s {2}-7\.7 % {2}measured \(simulated\)\n/,
    );
    expect(out).toMatch(
      /\n {2}oakhollow\/daisy-pla {2}top surface, layer {3}53 mm\/s, melt {2}48 mm\/s, melt {2}-9\.4 %\n/,
    );
    expect(out).toMatch(/\n1 problem to fix\n {2}profiles\/filaments\/oakhollow\/daisy-pla\.yaml:4:10 error/);
    expect(unwrapped(out)).toContain('the manual of the machine');
  });

  it('is clean where the version has moved far enough', async () => {
    const { status, out } = await runCommand(changedRegistry('2.0.0').cwd, ['diff', 'main']);
    expect(status).toBe(0);
    expect(out).toContain('filament oakhollow/daisy-pla: 1.0.0 → 2.0.0, a major change\n');
  });

  it('says that nothing differs', async () => {
    const outcome = await runCommand(committedRegistry().cwd, ['diff', 'HEAD']);
    expect(outcome).toEqual({ status: 0, out: 'Nothing differs.\n\nHEAD → the working tree\n', err: '' });
  });

  it('sees files that git does not know yet', async () => {
    const registry = committedRegistry();
    registry.write('jobs/peg.yaml', registry.read('jobs/hook.yaml').replace('id: hook', 'id: peg'));
    const { report } = await jsonOf(registry.cwd, 'HEAD');
    expect(report.profiles).toMatchObject([{ kind: 'job', id: 'peg', status: 'added' }]);
  });

  it('takes a file that was renamed for the same profile', async () => {
    const registry = committedRegistry();
    renameSync(registry.path('jobs/hook.yaml'), registry.path('jobs/coat-hook.yaml'));
    expect((await jsonOf(registry.cwd, 'HEAD')).report.profiles).toEqual([]);
  });

  it('shows the changes as annotations of the files', async () => {
    const { out } = await runCommand(changedRegistry().cwd, ['diff', 'main', '--format', 'annotations']);
    expect(out).toMatch(
      /^::error file=profiles\/filaments\/oakhollow\/daisy-pla\.yaml,line=4,.*title=diff\/version-too-small::/,
    );
  });
});

describe('diff of two commits', () => {
  it('reads both from the repository and leaves the working tree alone', async () => {
    const registry = changedRegistry('2.0.0');
    git(registry.cwd, 'commit', '--quiet', '--all', '--message', 'Lower a limit');
    registry.write(daisy, 'kind: [');
    const before = git(registry.cwd, 'status', '--porcelain');
    const { report, status } = await jsonOf(registry.cwd, 'HEAD~1', 'HEAD');
    expect(status).toBe(0);
    expect(report).toMatchObject({
      format: 'meltbounds-diff/1',
      base: 'HEAD~1',
      head: 'HEAD',
      bump: 'major',
      profiles: [
        {
          id: 'oakhollow/daisy-pla',
          version: { base: '1.0.0', head: '2.0.0' },
          changes: [
            {
              name: 'meltFlow',
              conditions: {
                machine: 'plumstead/wren',
                nozzle: 'hs-0.6',
                nozzleTemperature: 230,
                batch: '26-0001',
              },
              base: { value: 26, unit: 'mm3/s', basis: 'measured' },
              head: { value: 24, unit: 'mm3/s', basis: 'measured' },
              bump: 'major',
            },
            {
              name: 'meltFlow',
              conditions: { machine: 'plumstead/wren', nozzle: 'hs-0.6', nozzleTemperature: 230 },
              base: { value: 26, unit: 'mm3/s', basis: 'measured' },
              head: { value: 24, unit: 'mm3/s', basis: 'measured' },
              bump: 'major',
            },
          ],
        },
      ],
    });
    expect(git(registry.cwd, 'status', '--porcelain')).toBe(before);
  });

  it('reads the sheets of trials too', async () => {
    const registry = committedRegistry();
    registry.edit('trials/2026/wren-daisy-pla-230.csv', '26,400,1.171', '26,400,1.172');
    git(registry.cwd, 'commit', '--quiet', '--all', '--message', 'Touch a record');
    const { report, status } = await jsonOf(registry.cwd, 'HEAD~1', 'HEAD');
    expect(status).toBe(1);
    expect(report.findings).toMatchObject([{ rule: 'diff/record-changed' }]);
  });

  it('finds everything new where the base has no registry yet', async () => {
    const folder = temporaryFolder();
    git(folder, 'init', '--quiet');
    git(folder, 'commit', '--quiet', '--allow-empty', '--message', 'Nothing');
    const registry = committedRegistry();
    git(registry.cwd, 'fetch', '--quiet', folder, 'HEAD:refs/heads/empty');
    const { report, status } = await jsonOf(registry.cwd, 'empty');
    expect(status).toBe(0);
    expect(report.profiles.length).toBe(registry.size());
    expect(report.tables.added.length).toBeGreaterThan(0);
  });

  it('takes a registry that git ignores for the same on both sides', async () => {
    const [registry, installed] = [committedRegistry(), sampleRegistry()];
    renameSync(join(installed.cwd, 'profiles'), join(registry.cwd, 'node_modules'));
    registry.write('../.gitignore', 'node_modules\n');
    registry.edit('jobs/hook.yaml', 'name: ', 'name: New ');
    const folders = ['--registry', 'profiles', '--registry', 'node_modules'];
    const { report } = await jsonOf(registry.cwd, 'HEAD', ...folders);
    expect(report.profiles).toMatchObject([{ id: 'hook', status: 'changed' }]);
  });
});

describe('diff of two folders', () => {
  it('needs no repository', async () => {
    const [old, now] = [sampleRegistry(), sampleRegistry()];
    now.edit(daisy, 'value: 26 mm3/s', 'value: 27 mm3/s');
    const { report, status } = await jsonOf(temporaryFolder(), old.cwd, join(now.cwd, 'profiles'));
    expect(status).toBe(1);
    expect(report).toMatchObject({ bump: 'minor', findings: [{ rule: 'diff/version-too-small' }] });
    expect(report.tables.moves.length).toBeGreaterThan(0);
  });

  it('gives the same bytes each time', async () => {
    const [old, now] = [sampleRegistry(), sampleRegistry()];
    now.edit(daisy, 'value: 26 mm3/s', 'value: 27 mm3/s');
    for (const format of ['text', 'json', 'markdown']) {
      const args = ['diff', old.cwd, now.cwd, '--format', format];
      const [first, second] = [await runCommand(old.cwd, args), await runCommand(old.cwd, args)];
      expect(first).toEqual(second);
    }
  });
});

describe('a profile that cannot be read', () => {
  it('is a finding', async () => {
    const registry = committedRegistry();
    registry.edit(daisy, 'value: 26 mm3/s', 'value: 26');
    const { status, out } = await runCommand(registry.cwd, ['diff', 'main']);
    expect(status).toBe(1);
    expect(out).toContain('filament oakhollow/daisy-pla: cannot be judged: it has errors of form');
    expect(out).toContain('meltbounds check');
  });
});

describe('diff cannot run', () => {
  it.each([['nowhere'], ['--output=stolen'], ['-p'], [''], ['^HEAD'], ['HEAD..HEAD'], ['HEAD\n']])(
    'with %j, which is neither commit nor folder',
    async (base) => {
      const { status, out, err } = await runCommand(committedRegistry().cwd, ['diff', '--', base]);
      expect({ status, out }).toEqual({ status: 2, out: '' });
      expect(err).toMatch(
        /^git knows no commit "[^\n]*" here\.\n.*\nOr name a folder that holds a registry\.\n$/,
      );
    },
  );

  it('outside of a git repository', async () => {
    const { status, err } = await runCommand(sampleRegistry().cwd, ['diff', 'main']);
    expect(status).toBe(2);
    expect(err).toMatch(/^diff asks git what has changed, but .* is not in a git repository\.\n/);
  });

  it('without git', async () => {
    const registry = committedRegistry();
    vi.stubEnv('PATH', registry.cwd);
    const { status, err } = await runCommand(registry.cwd, ['diff', 'main']);
    vi.unstubAllEnvs();
    expect(status).toBe(2);
    expect(err).toMatch(/^diff asks git what has changed, and git is not installed\.\n/);
  });

  it('with a commit that a shallow clone lacks', async () => {
    const registry = committedRegistry();
    git(registry.cwd, 'commit', '--quiet', '--allow-empty', '--message', 'More');
    const clone = temporaryFolder();
    git(clone, 'clone', '--quiet', '--depth=1', `file://${registry.cwd}`, '.');
    const { status, err } = await runCommand(clone, ['diff', 'HEAD~1']);
    expect(status).toBe(2);
    expect(err).toMatch(/This clone is shallow: .*git fetch --unshallow/);
  });

  it('where there is no registry', async () => {
    const { status, err } = await runCommand(temporaryFolder(), ['diff', 'main']);
    expect(status).toBe(2);
    expect(err).toMatch(/^There is no registry in this folder/);
  });
});

describe('the comment for a pull request', () => {
  it('is as in the golden file', async () => {
    const { out } = await runCommand(changedRegistry().cwd, ['diff', 'main', '--format', 'markdown']);
    await expect(out).toMatchFileSnapshot('../goldens/diff-comment.md');
  });

  it('shows what profiles say as text', async () => {
    const registry = committedRegistry();
    const nasty = '<img src=x>|[a](https://b.example)@c#1`';
    registry.edit('polymers/PLA.yaml', 'notice: ', `cautions: ['${nasty}']\nnotice: `);
    registry.write(`jobs/${nasty.replaceAll('/', '')}.yaml`, 'kind: [');
    const { out } = await runCommand(registry.cwd, ['diff', 'main', '--format', 'markdown']);
    expect(out).toContain('img src=x');
    const fences = /^(`{3,}).*\n[\s\S]*?\n\1$/gm;
    const comment = out.replace('<!-- meltbounds diff -->', '').replace(fences, '');
    const prose = comment.replace(/(?<![\\`])`[^`\n]+`(?!`)/g, '');
    expect(prose).not.toMatch(/(?<!\\)[<>`[\]]|@(?!&#8203;)|#1|:\/\//);
    expect(comment.match(/`[^`\n]*`/g)?.length).toBeLessThan(10);
  });

  it('stays short enough for a code host, whatever changes', async () => {
    const registry = committedRegistry();
    const cautions = (word: string) =>
      Array.from({ length: 20 }, (_, index) => `'${word}${index} ${'<'.repeat(150)}'`).join(', ');
    const text = registry.read('polymers/PLA.yaml');
    for (let index = 0; index < 25; index++) {
      const changed = text.replace('notice: ', `cautions: [${cautions('a')}]\nnotice: `);
      registry.write(`polymers/PLA${index}.yaml`, changed.replace('id: PLA', `id: PLA${index}`));
    }
    git(registry.cwd, 'add', '.');
    git(registry.cwd, 'commit', '--quiet', '--message', 'Many');
    for (let index = 0; index < 25; index++) {
      const file = `polymers/PLA${index}.yaml`;
      registry.write(file, registry.read(file).replace(cautions('a'), cautions('b')));
    }
    const { out } = await runCommand(registry.cwd, ['diff', 'main', '--format', 'markdown']);
    expect(out).toContain('25 profiles differ');
    expect(out).toMatch(/\| minor \| cautions\/.*\|/);
    expect(out).toMatch(/^And \d+ profiles more\.$/m);
    expect(out.length).toBeLessThan(65_536);
  });
});
