import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCommand } from '../run-command.ts';
import { sampleRegistry, temporaryFolder } from '../sample-registry.ts';

describe('export', () => {
  it('writes a file per table, and says how many rows each has', async () => {
    const { cwd } = sampleRegistry();
    const { status, out, err } = await runCommand(cwd, ['export', '--out', 'export']);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toMatch(/^file +rows\nreadings\.parquet +68\ntrials\.parquet +3\n/);
    expect(out).toMatch(/\nexport.datapackage\.json describes the columns, their units and keys\.\n$/);
    expect(readdirSync(join(cwd, 'export'))).toEqual(
      [...out.matchAll(/^\S+\.parquet/gm)]
        .map(([file]) => file)
        .concat('datapackage.json')
        .sort(),
    );
  });

  it('writes over an earlier one, and leaves what else is in the folder', async () => {
    const registry = sampleRegistry();
    await runCommand(registry.cwd, ['export', '--out', 'export']);
    const before = readFileSync(join(registry.cwd, 'export/filaments.parquet'));
    writeFileSync(join(registry.cwd, 'export/notes.txt'), 'mine\n');
    registry.edit('filaments/oakhollow/daisy-pla.yaml', 'name: Daisy PLA', 'name: Daisy White PLA');
    expect(await runCommand(registry.cwd, ['export', '--out', 'export'])).toMatchObject({ status: 0 });
    expect(readFileSync(join(registry.cwd, 'export/filaments.parquet')).equals(before)).toBe(false);
    expect(readFileSync(join(registry.cwd, 'export/notes.txt'), 'utf8')).toBe('mine\n');
    expect(readdirSync(join(registry.cwd, 'export')).filter((name) => name.startsWith('.'))).toEqual([]);
  });

  it('derives tables under one policy, or none', async () => {
    const registry = sampleRegistry();
    const house = registry.read('policies/house.yaml');
    registry.write('policies/other.yaml', house.replace('id: house', 'id: other'));
    const rowsOfTables = async (...args: string[]) => {
      const { status, out } = await runCommand(registry.cwd, ['export', '--out', 'export', ...args]);
      const described = JSON.parse(readFileSync(join(registry.cwd, 'export/datapackage.json'), 'utf8'));
      return [status, Number(/^tables\.parquet +(\d+)$/m.exec(out)?.[1]), described.description];
    };
    expect(await rowsOfTables()).toEqual([0, 96, expect.stringContaining('under policies house and other.')]);
    expect(await rowsOfTables('--policy', 'other')).toEqual([
      0,
      48,
      expect.stringContaining('under policy other.'),
    ]);
    expect(await rowsOfTables('--no-tables')).toEqual([
      0,
      0,
      expect.stringContaining('No tables were derived.'),
    ]);
  });

  it('reads the folder that is named, as with --registry', async () => {
    const { cwd } = sampleRegistry();
    const elsewhere = temporaryFolder();
    const run = (...args: string[]) => runCommand(elsewhere, ['export', ...args, '--out', 'export']);
    const named = await run(join(cwd, 'profiles'));
    expect(named.status).toBe(0);
    expect(await run('--registry', join(cwd, 'profiles'))).toEqual(named);
  });

  it('writes nothing where a file would go over a link or a folder', async () => {
    const { cwd } = sampleRegistry();
    mkdirSync(join(cwd, 'export/limits.parquet'), { recursive: true });
    expect(await runCommand(cwd, ['export', '--out', 'export'])).toMatchObject({
      status: 2,
      out: '',
      err: expect.stringMatching(/limits\.parquet is no plain file; nothing was written/),
    });
    mkdirSync(join(cwd, 'other'));
    symlinkSync(join(cwd, 'elsewhere'), join(cwd, 'other/limits.parquet'));
    expect(await runCommand(cwd, ['export', '--out', 'other'])).toMatchObject({
      status: 2,
      err: expect.stringMatching(/limits\.parquet is a link/),
    });
    expect(readdirSync(join(cwd, 'export'))).toEqual(['limits.parquet']);
  });

  it.each([
    [['export'], "required option '--out <folder>'"],
    [['export', '--out', 'export', 'nowhere'], 'nowhere'],
    [['export', '--out', 'export', '--licence', 'as you like'], 'SPDX'],
    [['export', '--out', 'export', '--policy', 'hose'], 'house'],
  ])('cannot run as %j', async (args, message) => {
    const { cwd } = sampleRegistry();
    expect(await runCommand(cwd, args)).toMatchObject({
      status: 2,
      out: '',
      err: expect.stringContaining(message),
    });
    expect(existsSync(join(cwd, 'export'))).toBe(false);
  });
});
