import { chmodSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { runCommand } from '../run-command.ts';
import { sampleRegistry } from '../sample-registry.ts';

const machine = 'machines/plumstead/wren.yaml';
const filament = 'filaments/oakhollow/daisy-pla.yaml';
const clover = 'filaments/oakhollow/clover-petg.yaml';

describe('check --fix', () => {
  it('writes units and numbers as the registry spells them, and says where on stderr', async () => {
    const registry = sampleRegistry();
    const before = registry.read(machine);
    registry.edit(machine, '430 mm/s,', '+0430. mm/s,');
    registry.edit(machine, '8200 mm/s2', '8200 mm/s²');
    registry.edit(filament, '200..235 Cel', '200 .. 235 °C');
    const { status, out, err } = await runCommand(registry.cwd, ['check', '--fix', '--fail-on', 'note']);
    expect(status).toBe(0);
    expect(out).toContain('no problems found.');
    expect(err).toBe(`Fixed profiles/${filament}: 1 spelling.\nFixed profiles/${machine}: 2 spellings.\n`);
    expect(registry.read(machine)).toBe(before);
  });

  it('puts keys in order with their comments', async () => {
    const registry = sampleRegistry();
    const before = registry.read(filament);
    const moved = before
      .replace('diameter: 1.75 mm\n', '')
      .replace('notice:', '# Measured with a micrometer.\ndiameter: 1.75 mm # two axes\nnotice:');
    registry.write(filament, moved);
    const { status, err } = await runCommand(registry.cwd, ['check', '--fix', '--fail-on', 'note']);
    expect({ status, err }).toEqual({
      status: 0,
      err: `Fixed profiles/${filament}: the order of its keys.\n`,
    });
    expect(registry.read(filament)).toBe(
      before.replace('diameter: 1.75 mm\n', '# Measured with a micrometer.\ndiameter: 1.75 mm # two axes\n'),
    );
  });

  it.each([
    ['all conditions', /\n {4}at: .*(?=\n {4}date: '2026-02-12')/, ''],
    ['a condition', /, nozzleTemperature: 245 Cel/, ''],
    [
      'a condition of a mapping on lines of its own',
      /at: \{machine: plumstead\/wren, .*\}/,
      'at:\n      machine: plumstead/wren # the small one',
    ],
  ])('adds %s that the trial of a limit knows', async (_, from, to) => {
    const registry = sampleRegistry();
    await runCommand(registry.cwd, ['reduce', 'wren-clover-petg-245', '--adopt']);
    const adopted = registry.read(clover);
    registry.write(clover, adopted.replace(from, to));
    expect(registry.read(clover)).not.toBe(adopted);

    const { status, err } = await runCommand(registry.cwd, ['check', '--fix', '--fail-on', 'note']);

    expect({ status, err }).toEqual({
      status: 0,
      err: `Fixed profiles/${clover}: the conditions of 1 limit.\n`,
    });
    expect(parse(registry.read(clover))).toEqual(parse(adopted));
    expect((await runCommand(registry.cwd, ['check', '--fix'])).err).toBe('');
  });

  it('adds no conditions of a trial that contradicts the limit', async () => {
    const registry = sampleRegistry();
    await runCommand(registry.cwd, ['reduce', 'wren-clover-petg-245', '--adopt']);
    const foreign = registry.read(clover).replace(/at: \{.*\}/, 'at: {nozzle: hs-0.4}');
    registry.write(clover, foreign);
    expect((await runCommand(registry.cwd, ['check', '--fix'])).status).toBe(1);
    expect(registry.read(clover)).toBe(foreign);
  });

  it('says nothing where there is no problems found', async () => {
    const registry = sampleRegistry();
    expect((await runCommand(registry.cwd, ['check', '--fix'])).err).toBe('');
  });

  it('leaves alone what it cannot fix without a doubt', async () => {
    const registry = sampleRegistry();
    registry.edit(machine, 'value: 430 mm/s', 'value: "1,240 mm/s"');
    const before = registry.read(machine);
    const { status, err } = await runCommand(registry.cwd, ['check', '--fix']);
    expect({ status, err }).toEqual({ status: 1, err: '' });
    expect(registry.read(machine)).toBe(before);
  });

  it('leaves alone a file with an error of syntax', async () => {
    const registry = sampleRegistry();
    registry.edit(machine, '430 mm/s,', '430mm/s,');
    registry.edit(machine, 'name: Wren\n', 'name: Wren\nname: Wren\n');
    const before = registry.read(machine);
    expect((await runCommand(registry.cwd, ['check', '--fix'])).err).toBe('');
    expect(registry.read(machine)).toBe(before);
  });

  it('fixes only the files asked for', async () => {
    const registry = sampleRegistry();
    registry.edit(machine, '430 mm/s,', '430mm/s,');
    registry.edit(filament, '1 kg', '1kg');
    const { err } = await runCommand(registry.cwd, ['check', '--fix', `profiles/${filament}`]);
    expect(err).toBe(`Fixed profiles/${filament}: 1 spelling.\n`);
    expect(registry.read(machine)).toContain('430mm/s');
  });

  it('keeps CRLF line ends, a byte-order mark and the permissions of the file', async () => {
    const registry = sampleRegistry();
    const windows = `\uFEFF${registry.read(filament).replaceAll('\n', '\r\n')}`;
    writeFileSync(registry.path(filament), windows.replace('1 kg', '1kg'));
    chmodSync(registry.path(filament), 0o640);
    await runCommand(registry.cwd, ['check', '--fix']);
    expect(readFileSync(registry.path(filament), 'utf8')).toBe(windows);
    expect(statSync(registry.path(filament)).mode & 0o777).toBe(0o640);
  });

  it('without the option only says that it could', async () => {
    const registry = sampleRegistry();
    registry.edit(filament, '1 kg', '1kg');
    const { status, out } = await runCommand(registry.cwd, ['check']);
    expect(status).toBe(0);
    expect(out).toContain('note style/unit-spelling');
    expect(out).toContain('meltbounds check --fix');
    expect(registry.read(filament)).toContain('1kg');
  });
});
