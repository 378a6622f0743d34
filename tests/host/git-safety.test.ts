/** @module-tag long */
import { chmodSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, test } from 'vitest';
import { commitAll, git } from '../git-repository.ts';
import { runCommand } from '../run-command.ts';
import { type SampleRegistry, sampleRegistry, temporaryFolder } from '../sample-registry.ts';

// What a pull request can bring, and what a repository can be set up to run, must not run on a look at it.

const hook = 'jobs/hook.yaml';

/** A program that leaves a mark when it is run. */
function marker(folder: string): { readonly program: string; readonly hasRun: () => boolean } {
  const mark = join(folder, 'has-run');
  const program = join(folder, 'attack.sh');
  writeFileSync(program, `#!/bin/sh\necho "$0 $@" >> ${mark}\ncat\n`);
  chmodSync(program, 0o755);
  return { program, hasRun: () => existsSync(mark) };
}

/** Puts the insides of a bare repository into a folder of a registry, as a commit can bring them. */
function plantRepository(registry: SampleRegistry, folder: string, config: string): void {
  const bare = temporaryFolder();
  git(bare, 'init', '--quiet', '--bare');
  for (const place of ['objects/pack', 'refs/heads'])
    mkdirSync(join(registry.path(folder), place), { recursive: true });
  writeFileSync(join(registry.path(folder), 'refs/heads/.keep'), '');
  writeFileSync(join(registry.path(folder), 'objects/pack/.keep'), '');
  registry.write(join(folder, 'HEAD'), readFileSync(join(bare, 'HEAD'), 'utf8'));
  registry.write(join(folder, 'config'), config);
}

describe('a folder with the insides of a repository', () => {
  const planted = (folder: string) => {
    const registry = sampleRegistry();
    commitAll(registry.cwd, 'Start');
    const { program, hasRun } = marker(temporaryFolder());
    plantRepository(
      registry,
      folder,
      `[core]\n\trepositoryformatversion = 0\n\tbare = false\n\tworktree = ${registry.path(folder)}\n\tfsmonitor = ${program}\n\tpager = ${program}\n[diff]\n\texternal = ${program}\n`,
    );
    registry.edit(hook, 'Coat hook', 'Hat hook');
    return { registry, hasRun };
  };

  it.each([[''], ['machines']])('at "%s" runs nothing and hides nothing', async (folder) => {
    const { registry, hasRun } = planted(folder);
    const { out, status } = await runCommand(registry.cwd, ['check', '--changed', 'HEAD']);
    expect(status).toBe(1);
    expect(out).toContain('file/repository');
    await runCommand(registry.cwd, ['diff', 'HEAD']);
    await runCommand(join(registry.cwd, 'profiles'), ['check', '--changed', 'HEAD']);
    expect(hasRun()).toBe(false);
  });

  it('does not hide what has changed beside it', async () => {
    const { registry } = planted('spare');
    const { out } = await runCommand(registry.cwd, ['check', '--changed', 'HEAD', '--format', 'junit']);
    expect(out).toContain(`profiles/${hook}`);
    expect((await runCommand(registry.cwd, ['diff', 'HEAD'])).out).toContain('hook');
  });
});

test('filters that attributes name do not run', async () => {
  const registry = sampleRegistry();
  commitAll(registry.cwd, 'Start');
  const { program, hasRun } = marker(temporaryFolder());
  git(registry.cwd, 'config', 'filter.attack.clean', program);
  git(registry.cwd, 'config', 'filter.attack.smudge', program);
  git(registry.cwd, 'config', 'diff.attack.textconv', program);
  git(registry.cwd, 'config', 'core.fsmonitor', program);
  writeFileSync(join(registry.cwd, '.gitattributes'), '* filter=attack diff=attack\n');
  registry.edit(hook, 'Coat hook', 'Hat hook');
  const { out } = await runCommand(registry.cwd, ['check', '--changed', 'HEAD', '--format', 'junit']);
  expect(out).toContain(`profiles/${hook}`);
  expect((await runCommand(registry.cwd, ['diff', 'HEAD'])).out).toContain('hook');
  expect(hasRun()).toBe(false);
});

test('what a partial clone lacks is not fetched', async () => {
  const registry = sampleRegistry();
  commitAll(registry.cwd, 'Start');
  git(registry.cwd, 'config', 'uploadpack.allowFilter', 'true');
  git(registry.cwd, 'config', 'uploadpack.allowAnySHA1InWant', 'true');
  const clone = temporaryFolder();
  git(clone, 'clone', '--quiet', '--filter=blob:none', '--no-checkout', `file://${registry.cwd}`, '.');
  const { program, hasRun } = marker(temporaryFolder());
  git(clone, 'config', 'remote.origin.uploadpack', program);
  git(clone, 'config', 'protocol.file.allow', 'always');
  mkdirSync(join(clone, 'profiles/jobs'), { recursive: true });
  writeFileSync(join(clone, 'profiles', hook), registry.read(hook));
  const { status, err } = await runCommand(clone, ['diff', 'HEAD']);
  expect({ status, ran: hasRun() }).toEqual({ status: 2, ran: false });
  expect(err).toMatch(/git cannot (list|read) /);
});

test('a list of what to ignore hides no file that git has', async () => {
  const registry = sampleRegistry();
  commitAll(registry.cwd, 'Start');
  writeFileSync(join(registry.cwd, '.gitignore'), 'profiles\n');
  registry.edit(hook, 'Coat hook', 'Hat hook');
  const checked = await runCommand(registry.cwd, ['check', '--changed', 'HEAD', '--format', 'junit']);
  expect(checked.out).toContain(`profiles/${hook}`);
  expect((await runCommand(registry.cwd, ['diff', 'HEAD'])).out).toContain('hook');
});

test('a registry of another repository is not asked about in this one', async () => {
  const [here, there] = [sampleRegistry(), sampleRegistry()];
  commitAll(here.cwd, 'Start');
  commitAll(there.cwd, 'Start');
  const { status, err } = await runCommand(here.cwd, ['check', '--changed', 'HEAD', '--registry', there.cwd]);
  expect(status).toBe(2);
  expect(err).toMatch(/^--changed asks git what has changed in .*, but .* is not kept there\.\n/);
});

test('a file with the line ends of another system has not changed', async () => {
  const registry = sampleRegistry();
  commitAll(registry.cwd, 'Start');
  registry.write(hook, registry.read(hook).replaceAll('\n', '\r\n'));
  const { out } = await runCommand(registry.cwd, ['check', '--changed', 'HEAD']);
  expect(out).toBe('0 profiles: no problems found.\n');
});
