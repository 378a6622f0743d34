import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checked, runCommand } from '../run-command.ts';
import { temporaryFolder } from '../sample-registry.ts';
import { isMandatory, uncommented } from '../scaffold/uncommented.ts';

const listed = (folder: string) => readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort();

describe('init', () => {
  it('makes a registry that passes check and rests on the published one', async () => {
    const cwd = temporaryFolder();
    const { status, out, err } = await runCommand(cwd, ['init', 'our-limits']);
    expect(status).toBe(0);
    expect(out.split('\n')).toEqual(
      expect.arrayContaining([
        ...['our-limits/package.json', 'our-limits/README.md', 'our-limits/.gitignore'],
        ...['our-limits/.github/workflows/check.yml', 'our-limits/profiles/policies/house.yaml'],
      ]),
    );
    expect(err).toBe('Then: cd our-limits && npm install && npm run check\n');
    expect(await checked(join(cwd, 'our-limits'))).toMatchObject({ findings: [], summary: { profiles: 1 } });
  });

  it('writes a package.json that depends on this version and names both registries', async () => {
    const cwd = temporaryFolder();
    await runCommand(cwd, ['init', 'Our Limits']);
    expect(JSON.parse(readFileSync(join(cwd, 'Our Limits/package.json'), 'utf8'))).toMatchObject({
      name: 'our-limits',
      private: true,
      devDependencies: { meltbounds: '^0.0.0' },
      meltbounds: { registries: ['meltbounds', 'profiles'] },
    });
  });

  it('leaves what is there as it is, and says what that needs', async () => {
    const cwd = temporaryFolder();
    writeFileSync(join(cwd, 'package.json'), '{"name": "mine"}');
    const { status, out, err } = await runCommand(cwd, ['init']);
    expect(status).toBe(0);
    expect(out).not.toContain('package.json');
    expect(readFileSync(join(cwd, 'package.json'), 'utf8')).toBe('{"name": "mine"}');
    expect(err).toContain('Left as they are: package.json.');
    expect(err).toContain('"registries": ["meltbounds", "profiles"]');
  });

  it('changes nothing when it runs twice', async () => {
    const cwd = temporaryFolder();
    await runCommand(cwd, ['init', 'ours']);
    const before = listed(cwd);
    expect(await runCommand(cwd, ['init', 'ours'])).toMatchObject({ status: 0, out: '' });
    expect(listed(cwd)).toEqual(before);
  });

  it('only lists with --dry-run', async () => {
    const cwd = temporaryFolder();
    expect((await runCommand(cwd, ['init', 'ours', '--dry-run'])).out).toContain('ours/package.json\n');
    expect(existsSync(join(cwd, 'ours'))).toBe(false);
  });

  it('refuses a name that a file has, without a half-made registry', async () => {
    const cwd = temporaryFolder();
    writeFileSync(join(cwd, 'ours'), 'a file');
    const { status, out, err } = await runCommand(cwd, ['init', 'ours']);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toMatch(/ours cannot be made \(EEXIST\)\.\nName one that you may make\.\n$/);
    expect(listed(cwd)).toEqual(['ours']);
  });

  it('refuses a folder that no package can be named after', async () => {
    const cwd = temporaryFolder();
    expect(await runCommand(cwd, ['init', '木'])).toMatchObject({
      status: 2,
      err: expect.stringContaining('meltbounds init our-limits'),
    });
  });
});

describe('in a new registry', () => {
  it('a filament is contributed, checked and turned into tables', async () => {
    const cwd = temporaryFolder();
    await runCommand(cwd, ['init']);
    const file = join(cwd, 'profiles/filaments/ours/tulip-pla.yaml');
    const set = ['polymer=PLA', 'name=Tulip PLA', 'maker=Ashgrove', 'sheet=ashgrove-stagecraft-pla-sheet'];
    await runCommand(cwd, ['new', 'filament', 'ours/tulip-pla', ...set.flatMap((pair) => ['--set', pair])]);
    writeFileSync(file, uncommented(readFileSync(file, 'utf8'), isMandatory));
    writeFileSync(
      file,
      `${readFileSync(file, 'utf8')}meltFlow:\n  - {value: 20 mm3/s, basis: assumed, reason: First print, at: {machine: brackwater/lantern}}\n`,
    );
    expect((await checked(cwd)).findings).toEqual([]);
    const { status, out } = await runCommand(cwd, [
      ...['tables', 'brackwater/lantern', 'ours/tulip-pla', '--policy', 'house', '--format', 'csv'],
    ]);
    expect(status).toBe(0);
    expect(out).toContain('outerContour');
  });
});
