/** @module-tag long */
import { cpSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { checked, runCommand } from '../run-command.ts';
import { sampleRegistry } from '../sample-registry.ts';

const demo = fileURLToPath(new URL('../../profiles', import.meta.url));

it.each([1, 3, 7])('%i shards find together what a check of everything finds', async (count) => {
  const registry = sampleRegistry();
  cpSync(demo, registry.path('.'), { recursive: true });
  registry.edit('machines/brackwater/lantern.yaml', 'maker:', 'makr:');
  registry.edit('filaments/ashgrove/stagecraft-pla.yaml', 'density:', 'densty:');
  const whole = await checked(registry.cwd);
  const shards = await Promise.all(
    Array.from({ length: count }, (_, index) => checked(registry.cwd, '--shard', `${index + 1}/${count}`)),
  );
  const place = ({ file, line, rule }: (typeof whole.findings)[number]) => `${file}:${line} ${rule}`;
  expect(shards.flatMap(({ findings }) => findings.map(place)).sort()).toEqual(
    whole.findings.map(place).sort(),
  );
  expect(shards.reduce((sum, { summary }) => sum + summary.profiles, 0)).toBe(whole.summary.profiles);
  expect(whole.findings.length).toBeGreaterThan(2);
});

it('may be empty', async () => {
  const { cwd } = sampleRegistry();
  const { status, out } = await runCommand(cwd, ['check', '--shard', '999/999']);
  expect(status).toBe(0);
  expect(out).toContain('0 profiles');
});

it.each(['0/3', '4/3', '3', '1/0', 'a/b'])('is not %s', async (part) => {
  const { cwd } = sampleRegistry();
  const { status, err } = await runCommand(cwd, ['check', '--shard', part]);
  expect(status).toBe(2);
  expect(err).toContain('write PART/PARTS');
});
