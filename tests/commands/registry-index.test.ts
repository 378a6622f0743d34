import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
import type { RegistryIndex } from '../../src/registry/mirror/registry-index.ts';
import { runCommand } from '../run-command.ts';
import { type SampleRegistry, sampleRegistry, temporaryFolder } from '../sample-registry.ts';

const daisy = 'filaments/oakhollow/daisy-pla.yaml';
const sheet = 'trials/2026/wren-daisy-pla-230.csv';
const schema = new URL('../../schema/output/index.schema.json', import.meta.url);

async function indexed(registry: SampleRegistry): Promise<RegistryIndex> {
  const { out, status } = await runCommand(registry.cwd, ['index']);
  expect(status).toBe(0);
  return JSON.parse(out) as RegistryIndex;
}

describe('index', () => {
  it('lists every profile, sorted by path, with the digest of its file', async () => {
    const registry = sampleRegistry();
    const { profiles } = await indexed(registry);
    const paths = profiles.map(({ path }) => path);
    expect(profiles).toHaveLength(registry.size());
    expect(paths).toEqual([...paths].sort());
    const sha256 = createHash('sha256')
      .update(readFileSync(registry.path(daisy)))
      .digest('hex');
    expect(profiles.find(({ path }) => path === daisy)).toEqual({
      path: daisy,
      sha256,
      kind: 'filament',
      id: 'oakhollow/daisy-pla',
      version: '1.0.0',
    });
  });

  it('names the sheet of a trial', async () => {
    const { profiles } = await indexed(sampleRegistry());
    const trial = profiles.find(({ id }) => id === 'wren-daisy-pla-230');
    expect(trial).toMatchObject({ sheet: { path: sheet } });
    expect(trial).not.toHaveProperty('version');
  });

  it('fits its schema, for the demo registry too', async () => {
    const validate = new Ajv().compile(JSON.parse(readFileSync(schema, 'utf8')));
    expect(validate(await indexed(sampleRegistry())), JSON.stringify(validate.errors)).toBe(true);
    const { out } = await runCommand(process.cwd(), ['index']);
    expect(validate(JSON.parse(out)), JSON.stringify(validate.errors)).toBe(true);
    expect(validate({ format: 'meltbounds-index/1', profiles: [{}] })).toBe(false);
  });

  it('is the same with other line ends', async () => {
    const registry = sampleRegistry();
    const before = await indexed(registry);
    registry.write(daisy, registry.read(daisy).replaceAll('\n', '\r\n'));
    expect(await indexed(registry)).toEqual(before);
  });

  it('is not written where a profile has errors of form', async () => {
    const registry = sampleRegistry();
    registry.edit(daisy, 'value: 22 mm3/s', 'value: 22');
    const { status, out, err } = await runCommand(registry.cwd, ['index']);
    expect({ status, out }).toEqual({ status: 1, out: '' });
    expect(err).toMatch(/^profiles\/filaments\/oakhollow\/daisy-pla\.yaml has errors of form\.\n.*check/);
  });

  it('is not written into a folder that is not there', async () => {
    const { status, err } = await runCommand(sampleRegistry().cwd, ['index', '--out', 'no/index.json']);
    expect(status).toBe(2);
    expect(err).toMatch(/^no\/index\.json cannot be written \(ENOENT\)\.\nCheck the folder.*\n$/);
  });
});

describe('index --verify', () => {
  async function withIndex(): Promise<SampleRegistry> {
    const registry = sampleRegistry();
    const { out } = await runCommand(registry.cwd, ['index', '--out', 'index.json']);
    expect(out).toBe('index.json\n');
    return registry;
  }

  it('finds a true copy the same', async () => {
    const registry = await withIndex();
    const { status, out } = await runCommand(registry.cwd, ['index', '--verify', 'index.json']);
    expect({ status, out }).toEqual({
      status: 0,
      out: `${registry.size() + 1} files: the same as in the index.\n`,
    });
  });

  it('lists what is missing, extra and altered', async () => {
    const registry = await withIndex();
    registry.remove('jobs/hook.yaml');
    registry.write('jobs/peg.yaml', 'kind: [');
    registry.edit(sheet, '26,400,1.171', '26,400,1.172');
    const { status, out } = await runCommand(registry.cwd, ['index', '--verify', 'index.json']);
    expect(status).toBe(1);
    expect(out).toBe(
      [
        'missing  jobs/hook.yaml',
        'extra    jobs/peg.yaml',
        `altered  ${sheet}`,
        `${registry.size() + 1} files: 1 missing, 1 extra, 1 altered.`,
        '',
      ].join('\n'),
    );
  });

  it.each([
    ['', /it is not a JSON object/],
    ['[]', /it is not a JSON object/],
    ['{"format":"other/1"}', /its "format" is "other\/1"/],
    ['{"format":"meltbounds-index/1"}', /its "profiles" is not a list/],
    ['{"format":"meltbounds-index/1","profiles":[7]}', /it lists 7, which is no path/],
  ])('cannot run with %j', async (text, message) => {
    const registry = sampleRegistry();
    writeFileSync(join(registry.cwd, 'index.json'), text);
    const { status, err } = await runCommand(registry.cwd, ['index', '--verify', 'index.json']);
    expect(status).toBe(2);
    expect(err).toMatch(message);
  });

  it.each(['../outside.yaml', '/etc/hosts', 'a//b', 'a/./b', '..\\outside'])(
    'does not follow %s out of the registry',
    async (path) => {
      const registry = sampleRegistry();
      const index = { format: 'meltbounds-index/1', profiles: [{ path, sha256: '0'.repeat(64) }] };
      writeFileSync(join(registry.cwd, 'index.json'), JSON.stringify(index));
      const { status, err } = await runCommand(registry.cwd, ['index', '--verify', 'index.json']);
      expect(status).toBe(2);
      expect(err).toContain('no path inside a registry');
    },
  );

  it('refuses a list that names a file twice, with whatever digests', async () => {
    const registry = await withIndex();
    const path = join(registry.cwd, 'index.json');
    const index = JSON.parse(readFileSync(path, 'utf8')) as { profiles: { sha256: string }[] };
    const again = { ...index.profiles[0], sha256: '0'.repeat(64) };
    writeFileSync(path, JSON.stringify({ ...index, profiles: [again, ...index.profiles] }));
    const { status, err } = await runCommand(registry.cwd, ['index', '--verify', 'index.json']);
    expect(status).toBe(2);
    expect(err).toMatch(/^index\.json: This is no index: it lists \S+ more than once\./);
  });

  it('cannot run without the index or the registry', async () => {
    const { status, err } = await runCommand(sampleRegistry().cwd, ['index', '--verify', 'none.json']);
    expect(status).toBe(2);
    expect(err).toMatch(/^none\.json cannot be read \(ENOENT\)\.\nCheck the spelling of the path\.\n$/);
    expect((await runCommand(temporaryFolder(), ['index'])).status).toBe(2);
  });
});
