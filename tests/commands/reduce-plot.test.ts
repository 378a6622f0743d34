import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCommand } from '../run-command.ts';
import { sampleRegistry } from '../sample-registry.ts';

const trial = ['reduce', 'wren-clover-petg-245'];

describe('--plot FILE.svg', () => {
  it('writes a picture of the ladder, the same bytes each time', async () => {
    const { cwd } = sampleRegistry();
    const { status, err } = await runCommand(cwd, [...trial, '--plot', 'ladder.svg']);
    expect({ status, err }).toEqual({ status: 0, err: 'Wrote ladder.svg.\n' });
    const svg = readFileSync(join(cwd, 'ladder.svg'), 'utf8');
    expect(svg).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg".*<\/svg>\n$/s);
    for (const text of ['>deficit (%)<', '>accepted deficit 5 %<', '>halted at 28 mm³/s<']) {
      expect(svg).toContain(text);
    }
    await runCommand(cwd, [...trial, '--plot', 'ladder.svg']);
    expect(readFileSync(join(cwd, 'ladder.svg'), 'utf8')).toBe(svg);
  });

  it('leaves the result on standard output to programs', async () => {
    const { cwd } = sampleRegistry();
    const { out } = await runCommand(cwd, [...trial, '--format', 'json', '--plot', 'ladder.svg']);
    expect(JSON.parse(out)).toMatchObject({ method: 'flowLadder' });
    expect(existsSync(join(cwd, 'ladder.svg'))).toBe(true);
  });

  it.each([
    ['no/ladder.svg', 'there is no folder no to write into'],
    ['ladder.png', 'End the name of the file with .svg.'],
    ['folder.svg', 'that is a folder'],
    ['file.txt/ladder.svg', 'there is no folder file.txt to write into'],
  ])('refuses %s and writes nothing', async (path, reason) => {
    const { cwd } = sampleRegistry();
    mkdirSync(join(cwd, 'folder.svg'));
    writeFileSync(join(cwd, 'file.txt'), '');
    const { status, out, err } = await runCommand(cwd, [...trial, '--plot', path]);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(reason);
    expect(readdirSync(cwd).sort()).toEqual(['file.txt', 'folder.svg', 'profiles']);
  });
});

describe('a plot in characters', () => {
  it('is printed for --plot -', async () => {
    const { out } = await runCommand(sampleRegistry().cwd, [...trial, '--plot', '-']);
    expect(out).toMatch(/\ndeficit \(%\)\n/);
    expect(out).toMatch(/commanded flow \(mm³\/s\)\n/);
    expect(out).toContain(': halted at 28 mm³/s');
  });

  it('has no place in JSON', async () => {
    const { status, err } = await runCommand(sampleRegistry().cwd, [
      ...trial,
      '--plot',
      '-',
      '--format',
      'json',
    ]);
    expect(status).toBe(2);
    expect(err).toContain('--plot -');
  });

  it.each([
    { terminalColumns: 80, args: [], shown: true },
    { terminalColumns: 40, args: [], shown: false },
    { terminalColumns: 80, args: ['--no-plot'], shown: false },
    { terminalColumns: 80, args: ['--plot', 'ladder.svg'], shown: false },
    { terminalColumns: 80, args: ['--format', 'json'], shown: false },
  ])(
    'in a terminal of $terminalColumns columns with $args: $shown',
    async ({ terminalColumns, args, shown }) => {
      const { out } = await runCommand(sampleRegistry().cwd, [...trial, ...args], { terminalColumns });
      expect(out.includes('deficit (%)')).toBe(shown);
    },
  );

  it('is not printed into a pipe', async () => {
    const { out } = await runCommand(sampleRegistry().cwd, trial);
    expect(out).not.toContain('deficit (%)');
  });
});
