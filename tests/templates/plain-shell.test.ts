import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { sampleRegistry, temporaryFolder } from '../sample-registry.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const script = join(root, 'templates/registry/ci/check.sh');
const pipeline = readFileSync(join(root, 'templates/registry/ci/pipeline.example'), 'utf8');

/** A registry under git, whose `npm` does what a test says and whose `npx` runs the program as it stands here. */
function registryWithTools(npm: string): { readonly cwd: string; readonly path: string } {
  const cwd = sampleRegistry().cwd;
  const git = (...args: string[]) =>
    execFileSync('git', ['-c', 'user.name=Bench', '-c', 'user.email=bench@example.org', ...args], { cwd });
  git('init', '--quiet', '--initial-branch', 'main');
  git('add', '.');
  git('commit', '--quiet', '--message', 'Begin');
  const path = temporaryFolder();
  const program = `shift 2; exec '${process.execPath}' --import '${root}node_modules/tsx/dist/esm/index.mjs' '${root}src/cli.ts' "$@"`;
  for (const [name, text] of Object.entries({ npm, npx: program })) {
    writeFileSync(join(path, name), `#!/bin/sh\n${text}\n`);
    chmodSync(join(path, name), 0o755);
  }
  return { cwd, path };
}

function checks({ cwd, path }: { readonly cwd: string; readonly path: string }) {
  const env = { ...process.env, PATH: `${path}:${process.env.PATH}` };
  return spawnSync('sh', [script, 'main'], { cwd, env, encoding: 'utf8' });
}

describe('ci/check.sh', () => {
  test('writes every report and says in its status that nothing is to be fixed', { tags: 'long' }, () => {
    const registry = registryWithTools('exit 0');
    const { status, stdout } = checks(registry);
    expect(status).toBe(0);
    expect(readdirSync(join(registry.cwd, 'reports')).sort()).toEqual([
      ...['check.html', 'check.md', 'diff.md', 'junit.xml', 'quality.json'],
    ]);
    expect(stdout).toContain('no problems found');
  });

  test('leaves what an earlier run has reported where the install fails, and cannot run', () => {
    const registry = registryWithTools('exit 1');
    mkdirSync(join(registry.cwd, 'reports'));
    writeFileSync(join(registry.cwd, 'reports/diff.md'), 'as it was');
    expect(checks(registry).status).toBe(2);
    expect(readdirSync(join(registry.cwd, 'reports'))).toEqual(['diff.md']);
    expect(readFileSync(join(registry.cwd, 'reports/diff.md'), 'utf8')).toBe('as it was');
  });

  test('leaves out the report of a command that could not run', { tags: 'long' }, () => {
    const registry = registryWithTools('exit 0');
    execFileSync('git', ['branch', '-m', 'main', 'other'], { cwd: registry.cwd });
    expect(checks(registry).status).toBe(2);
    expect(existsSync(join(registry.cwd, 'reports/diff.md'))).toBe(false);
    expect(existsSync(join(registry.cwd, 'reports/junit.xml'))).toBe(true);
  });
});

test('the pipeline runs the script, and hands on the reports that it writes', () => {
  const { check } = parse(pipeline);
  expect(check.script.join()).toMatch(/^sh ci\/check\.sh /);
  const written = [...readFileSync(script, 'utf8').matchAll(/^report (\S+)/gm)].map(
    ([, file]) => `reports/${file}`,
  );
  expect(written).toEqual(expect.arrayContaining(Object.values(check.artifacts.reports)));
  // What a merge request computes stays its own.
  expect(check.rules.map(({ variables }: { variables: object }) => variables)).toEqual([
    { RESULTS: 'pull' },
    { RESULTS: 'pull-push' },
  ]);
});

describe('for other repositories', () => {
  test('the action runs the program with options that it has, and puts no text of a stranger into a shell line', () => {
    const { runs, inputs } = parse(readFileSync(join(root, 'action.yml'), 'utf8'));
    const [step] = runs.steps;
    expect(step.run).not.toContain('${{');
    expect(Object.keys(step.env)).toHaveLength(Object.keys(inputs).length);
    const help = execFileSync(process.execPath, ['--import', 'tsx', 'src/cli.ts', 'check', '--help'], {
      cwd: root,
      encoding: 'utf8',
    });
    for (const [option] of step.run.matchAll(/--(?:changed|fail-on|format)\b/g))
      expect(help).toContain(option);
    expect(spawnSync('bash', ['-n'], { input: step.run }).status).toBe(0);
  });

  test('the hooks match profiles and nothing else', () => {
    const hooks: { files: string; entry: string; language: string }[] = parse(
      readFileSync(join(root, '.pre-commit-hooks.yaml'), 'utf8'),
    );
    expect(hooks.map(({ entry }) => entry.split(' ')[0])).toEqual(hooks.map(() => 'meltbounds'));
    for (const { files } of hooks) {
      expect('profiles/machines/brackwater/lantern.yaml').toMatch(new RegExp(files));
      expect('our-limits/profiles/jobs/peg.yml').toMatch(new RegExp(files));
      expect('profiles/trials/2026/ladder.csv').not.toMatch(new RegExp(files));
      expect('docs/profiles.yaml').not.toMatch(new RegExp(files));
    }
  });
});

test('this repository sets editors up as init does, by schemas of its own', () => {
  const settings = (folder: string) => readFileSync(join(root, folder, 'settings.json'), 'utf8');
  const shipped = settings('templates/registry/_vscode');
  expect(settings('.vscode')).toBe(shipped.replaceAll('./node_modules/meltbounds/schema/', './schema/'));
  for (const schema of Object.keys(JSON.parse(settings('.vscode'))['yaml.schemas']))
    expect(existsSync(join(root, schema))).toBe(true);
});
