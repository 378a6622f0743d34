import { readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { commitAll } from '../git-repository.ts';
import { runCommand } from '../run-command.ts';
import { sampleRegistry } from '../sample-registry.ts';

const file = 'trials/2026/wren-daisy-pla-230.yaml';
const present = 'scale: {resolution: 0.001 g}';
const old = 'scaleResolution: 0.001 g # on its plate';
const migrated = 'scale:\n  resolution: 0.001 g # on its plate';

function oldRegistry() {
  const registry = sampleRegistry();
  registry.edit(file, present, old);
  return registry;
}

test('writes the present shape and says what it has changed', async () => {
  const registry = oldRegistry();
  const { status, out } = await runCommand(registry.cwd, ['migrate']);
  expect(status).toBe(0);
  expect(out).toBe(`profiles/${file}
  0001  \`scaleResolution\` of a trial is now \`resolution\` under \`scale\`
  -${old}
  +scale:
  +  resolution: 0.001 g # on its plate
${registry.size()} files: 1 changed.
`);
  expect(registry.read(file)).toContain(migrated);
  expect(await runCommand(registry.cwd, ['check', `profiles/${file}`])).toMatchObject({ status: 0 });
});

test('a second run changes nothing', async () => {
  const registry = oldRegistry();
  await runCommand(registry.cwd, ['migrate']);
  const text = registry.read(file);
  const { status, out } = await runCommand(registry.cwd, ['migrate']);
  expect([status, out]).toEqual([0, `${registry.size()} files: 0 changed.\n`]);
  expect(registry.read(file)).toBe(text);
});

test('--dry-run says the same, leaves the files and ends with 1', async () => {
  const registry = oldRegistry();
  const { status, out } = await runCommand(registry.cwd, ['migrate', '--dry-run']);
  expect(status).toBe(1);
  expect(out).toContain(`-${old}`);
  expect(out).toContain('1 would be changed');
  expect(registry.read(file)).toContain(old);
});

test('takes files and folders', async () => {
  const registry = oldRegistry();
  const other = await runCommand(registry.cwd, ['migrate', 'profiles/machines']);
  expect(other.out).toContain(': 0 changed.');
  const own = await runCommand(registry.cwd, ['migrate', `profiles/${file}`]);
  expect(own.out).toContain('1 file: 1 changed.');
});

test('keeps a byte-order mark', async () => {
  const registry = oldRegistry();
  writeFileSync(registry.path(file), `\uFEFF${registry.read(file)}`);
  await runCommand(registry.cwd, ['migrate']);
  expect(readFileSync(registry.path(file), 'utf8')).toMatch(/^\uFEFF#[\s\S]*scale:\n {2}resolution/);
});

test('names a file that a person has to change', async () => {
  const registry = sampleRegistry();
  registry.edit(file, present, `${present}\n${old}`);
  const { status, out } = await runCommand(registry.cwd, ['migrate']);
  expect(status).toBe(1);
  expect(out).toContain(`profiles/${file}: "scaleResolution" could not be changed without touching more`);
});

test('does not follow links', async () => {
  const registry = oldRegistry();
  symlinkSync(registry.path(file), join(registry.cwd, 'profiles/trials/2026/linked.yaml'));
  const { status, err } = await runCommand(registry.cwd, ['migrate']);
  expect(status).toBe(2);
  expect(err).toContain('linked.yaml cannot be read');
  expect(registry.read(file)).toContain(old);
});

test('a path that is not there cannot be run on', async () => {
  const { status, err } = await runCommand(sampleRegistry().cwd, ['migrate', 'nowhere']);
  expect([status, err]).toEqual([2, expect.stringContaining('There is no file or folder nowhere.')]);
});

test('check leads from the old shape to this command', async () => {
  const registry = oldRegistry();
  const { status, out } = await runCommand(registry.cwd, ['check', `profiles/${file}`]);
  expect(status).toBe(1);
  expect(out).toContain('fix      Run `meltbounds migrate`: `scaleResolution` of a trial is now');
});

test('diff takes a migration for no change', async () => {
  const registry = oldRegistry();
  commitAll(registry.cwd, 'Old shape');
  await runCommand(registry.cwd, ['migrate']);
  const { status, out } = await runCommand(registry.cwd, ['diff', 'HEAD']);
  expect(status).toBe(0);
  expect(out).toContain('Nothing differs');
});
