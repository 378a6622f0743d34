import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checked, runCommand, spawnCommand } from '../run-command.ts';
import { registryWithError, sampleRegistry, temporaryFolder } from '../sample-registry.ts';

const filament = 'filaments/oakhollow/daisy-pla.yaml';

describe('the exit status', () => {
  it('is 0 where there is no problems found', async () => {
    const registry = sampleRegistry();
    expect(await runCommand(registry.cwd, ['check'])).toEqual({
      status: 0,
      out: `${registry.size()} profiles: no problems found.\n`,
      err: '',
    });
  });

  it('is 1 with findings', async () => {
    const { status, out, err } = await runCommand(registryWithError().cwd, ['check']);
    expect({ status, err }).toEqual({ status: 1, err: '' });
    expect(out).toContain('units/bare-number');
    expect(out).toMatch(/^\d+ profiles: 1 error\.\n\n/);
  });

  it.each<[string, string[], string]>([
    ['no registry', ['check'], 'There is no registry in this folder'],
    ['an empty folder', ['check', '.'], 'There is no profile (.yaml) to check here.'],
    ['a missing path', ['check', 'profiles/machnies'], 'There is no file or folder profiles/machnies.'],
    ['a missing registry', ['check', '--registry', 'elsewhere'], 'There is no folder elsewhere.'],
    ['an unknown option', ['check', '--formt', 'json'], "error: unknown option '--formt'"],
    ['an unknown format', ['check', '--format', 'xml'], 'Allowed choices are text, json'],
    ['an unknown severity', ['check', '--fail-on', 'hint'], 'Allowed choices are error, warning, note'],
    ['an unknown command', ['chek'], 'Did you mean check?'],
  ])('is 2 with %s, and says so', async (_, args, message) => {
    const { status, out, err } = await runCommand(temporaryFolder(), args);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(message);
  });

  it.each(['yesterday', '2026-02-30', '2026-2-3', '26-02-03', ''])(
    'is 2 with %j as the day of today',
    async (day) => {
      const { status, err } = await runCommand(sampleRegistry().cwd, ['check', '--today', day]);
      expect(status).toBe(2);
      expect(err).toContain('write a date as YYYY-MM-DD');
    },
  );

  it('counts only findings as grave as --fail-on says', async () => {
    const registry = sampleRegistry();
    // An order of keys that is not that of the schema is a note.
    registry.edit('jobs/hook.yaml', 'version: 1.0.0\nname: Coat hook\n', 'name: Coat hook\nversion: 1.0.0\n');
    const statusFor = async (...args: string[]) =>
      (await runCommand(registry.cwd, ['check', ...args])).status;

    expect((await checked(registry.cwd)).summary).toMatchObject({ errors: 0, warnings: 0, notes: 1 });
    expect(await statusFor()).toBe(0);
    expect(await statusFor('--fail-on', 'warning')).toBe(0);
    expect(await statusFor('--fail-on', 'note')).toBe(1);
  });
});

describe('run as a program', () => {
  it('ends with its exit status and writes the report to standard output', () => {
    const { status, out, err } = spawnCommand(registryWithError().cwd, ['check', '--today', '2026-06-01']);
    expect({ status, err }).toEqual({ status: 1, err: '' });
    expect(out).toContain('units/bare-number');
    expect(out).not.toContain('\u001b');
  });

  it('writes why it cannot run to standard error', () => {
    const { status, out, err } = spawnCommand(temporaryFolder(), ['check']);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toMatch(/^There is no registry in this folder.*\n.*`meltbounds init`\.\n$/);
  });

  it('tells the version of the package', () => {
    const manifest = readFileSync(new URL('../../package.json', import.meta.url), 'utf8');
    expect(spawnCommand(temporaryFolder(), ['--version'])).toEqual({
      status: 0,
      out: `${JSON.parse(manifest).version}\n`,
      err: '',
    });
  });

  it('writes the same bytes every time, in any time zone and language', { tags: 'long' }, () => {
    const registry = registryWithError();
    registry.edit(filament, 'diameterTolerance:', 'DIAMETERTOLERANCE:');
    registry.edit(filament, 'value: 26 mm3/s', 'value: 36 mm3/s');
    const args = ['check', '--format', 'json', '--today', '2026-06-01'];
    const first = spawnCommand(registry.cwd, args, { TZ: 'UTC', LANG: 'C' });
    const elsewhere = spawnCommand(registry.cwd, args, {
      TZ: 'Pacific/Kiritimati',
      LANG: 'tr_TR.UTF-8',
      LC_ALL: 'tr_TR.UTF-8',
    });

    expect(first.status).toBe(1);
    expect(JSON.parse(first.out).findings).toHaveLength(3);
    expect(elsewhere).toEqual(first);
  });
});
