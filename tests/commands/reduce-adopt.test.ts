import { statSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { checked, runCommand } from '../run-command.ts';
import { type SampleRegistry, sampleRegistry } from '../sample-registry.ts';

const daisy = 'filaments/oakhollow/daisy-pla.yaml';
const clover = 'filaments/oakhollow/clover-petg.yaml';

describe('--adopt', () => {
  const adopt = (registry: SampleRegistry, trial: string) =>
    runCommand(registry.cwd, ['reduce', trial, '--adopt']);

  it('writes the limit into the filament, before what follows limits, and check is content', async () => {
    const registry = sampleRegistry();
    const before = registry.read(clover);

    const { status, err } = await adopt(registry, 'wren-clover-petg-245');

    expect({ status, err }).toEqual({ status: 0, err: `Wrote the limit into profiles/${clover}.\n` });
    const [head, tail] = before.split('notice:');
    const after = registry.read(clover);
    expect(after.startsWith(head ?? '')).toBe(true);
    expect(after.endsWith(`notice:${tail}`)).toBe(true);
    expect(after.slice(head?.length, after.length - `notice:${tail}`.length)).toMatch(
      /^meltFlow:\n {2}- value: 19[.\d]* mm3\/s\n {4}interval: 19[.\d]*\.\.20[.\d]* mm3\/s\n {4}basis: measured\n {4}evidence: wren-clover-petg-245\n {4}readings: '?[0-9a-f]{16}'?\n {4}at: \{machine: plumstead\/wren, nozzle: hs-0\.6, nozzleTemperature: 245 Cel, batch: [^}]+\}\n {4}date: '2026-02-12'\n$/,
    );
    expect((await checked(registry.cwd)).findings).toEqual([]);
  });

  it('adds to the limits that are there and keeps comments, order and line ends', async () => {
    const registry = sampleRegistry();
    const crlf = registry
      .read(daisy)
      .replace(/ {2}- value: 26[\s\S]*?'2026-02-11'\n/, '')
      .replace("date: '2026-02-10'\n", "date: '2026-02-10' # the first of them\n")
      .replace(/$/, '# The end.')
      .replaceAll('\n', '\r\n');
    registry.write(daisy, crlf);

    await adopt(registry, 'wren-daisy-pla-230');

    const after = registry.read(daisy);
    const at = crlf.indexOf('notice:');
    expect(after.slice(0, at)).toBe(crlf.slice(0, at));
    expect(after.slice(after.indexOf('notice:'))).toBe(crlf.slice(at));
    expect(after.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(after).toContain('\r\n    evidence: wren-daisy-pla-230\r\n');
    expect((await checked(registry.cwd)).findings).toEqual([]);
  });

  it('leaves a comment with the key that it stands above', async () => {
    const registry = sampleRegistry();
    registry.edit(clover, 'notice:', '# About all of this:\nnotice:');

    await adopt(registry, 'wren-clover-petg-245');

    expect(registry.read(clover)).toMatch(/\n {4}date: '2026-02-12'\n# About all of this:\nnotice:/);
  });

  it('writes at the end where nothing follows, even without a last line end', async () => {
    const registry = sampleRegistry();
    registry.write(clover, registry.read(clover).replace(/\nnotice:.*\n$/, ''));

    await adopt(registry, 'wren-clover-petg-245');

    expect(registry.read(clover)).toMatch(/\nmeltFlow:\n {2}- value: [\s\S]*\n {4}date: '2026-02-12'\n$/);
    expect((await checked(registry.cwd)).findings).toEqual([]);
  });

  it('keeps the indentation of a list', async () => {
    const registry = sampleRegistry();
    const text = registry.read(daisy).replace(/meltFlow:\n[\s\S]*?(?=notice:)/, (block) =>
      block
        .replace(/ {2}- value: 26[\s\S]*/, '')
        .replaceAll(/^ {2}(?=[- ])/gm, '')
        .replaceAll(/^ {2}#/gm, '#'),
    );
    registry.write(daisy, text);

    await adopt(registry, 'wren-daisy-pla-230');

    expect(registry.read(daisy)).toMatch(/\n- value: 27[.\d]* mm3\/s\n {2}interval: /);
    expect((await checked(registry.cwd)).findings).toEqual([]);
  });

  it('twice changes nothing: neither the bytes nor the time of the file', async () => {
    const registry = sampleRegistry();
    await adopt(registry, 'wren-clover-petg-245');
    const once = { text: registry.read(clover), time: statSync(registry.path(clover)).mtimeMs };

    const { status, err } = await adopt(registry, 'wren-clover-petg-245');

    expect({ status, err }).toEqual({ status: 0, err: `profiles/${clover} states this limit already.\n` });
    expect({ text: registry.read(clover), time: statSync(registry.path(clover)).mtimeMs }).toEqual(once);
  });

  it('brings a limit up to date that is not what the readings give, and nothing else', async () => {
    const registry = sampleRegistry();
    await adopt(registry, 'wren-clover-petg-245');
    const adopted = registry.read(clover);
    registry.write(
      clover,
      adopted.replace(/value: 19[.\d]* mm3/, 'value: 25 mm3').replace(/19[.\d]*\.\.20/, '24..30'),
    );
    expect((await checked(registry.cwd)).findings.map(({ rule }) => rule)).toContain('evidence/unsupported');

    await adopt(registry, 'wren-clover-petg-245');

    expect(registry.read(clover)).toBe(adopted);
  });

  it.each<[string, string]>([
    ['a statement on one line', '  - {value: 12 mm3/s, basis: measured, evidence: wren-clover-petg-245}\n'],
    [
      'a statement with a comment and some of its conditions',
      '  - value: 12 mm3/s # as typed\n    basis: measured\n    evidence: wren-clover-petg-245 # on Monday\n    at: {nozzle: hs-0.6, layerHeight: 0.2 mm}\n',
    ],
    [
      'a statement with its conditions on lines of their own',
      '  - value: 12 mm3/s\n    basis: measured\n    evidence: wren-clover-petg-245\n    at:\n      nozzle: hs-0.6\n',
    ],
  ])('adds to %s what its trial knows', async (_, statement) => {
    const registry = sampleRegistry();
    registry.edit(clover, 'notice:', `meltFlow:\n${statement}notice:`);

    const { status } = await adopt(registry, 'wren-clover-petg-245');

    expect(status).toBe(0);
    expect((await checked(registry.cwd)).findings).toEqual([]);
    const [limit] = (parse(registry.read(clover)) as { meltFlow: Record<string, unknown>[] }).meltFlow;
    expect(limit).toMatchObject({
      value: expect.stringMatching(/^19[.\d]* mm3\/s$/),
      interval: expect.stringMatching(/^19[.\d]*\.\.20[.\d]* mm3\/s$/),
      at: {
        machine: 'plumstead/wren',
        nozzle: 'hs-0.6',
        nozzleTemperature: '245 Cel',
        batch: '26-0002',
      },
    });
    expect(Object.keys(limit ?? {}).slice(0, 3)).toEqual(['value', 'interval', 'basis']);
    for (const comment of statement.match(/#.*/g) ?? []) expect(registry.read(clover)).toContain(comment);
  });

  it('restates the limit of its own trial, though one above it cannot be read', async () => {
    const registry = sampleRegistry();
    await adopt(registry, 'wren-clover-petg-245');
    const adopted = registry.read(clover);
    const broken = '  - {value: 12, basis: assumed, reason: Bench habit}\n';
    const twoLimits = adopted.replace('meltFlow:\n', `meltFlow:\n${broken}`);
    registry.write(clover, twoLimits.replace(/value: 19[.\d]* mm3/, 'value: 18 mm3'));

    await adopt(registry, 'wren-clover-petg-245');

    expect(registry.read(clover)).toBe(twoLimits);
  });

  it('keeps a byte-order mark', async () => {
    const registry = sampleRegistry();
    registry.write(clover, `\uFEFF${registry.read(clover)}`);

    await adopt(registry, 'wren-clover-petg-245');

    expect(registry.read(clover)).toMatch(/^\uFEFF#[^\uFEFF]*\nmeltFlow:\n {2}- value: 19[^\uFEFF]*$/);
  });

  it('quotes what YAML would read as a number', async () => {
    const registry = sampleRegistry();
    registry.edit('machines/plumstead/wren.yaml', '{id: hs-0.4,', "{id: '0.4',");
    registry.edit('trials/2026/wren-clover-petg-245.yaml', 'nozzle: hs-0.6', "nozzle: '0.4'");

    await adopt(registry, 'wren-clover-petg-245');

    expect(registry.read(clover)).toContain("nozzle: '0.4'");
    expect((await checked(registry.cwd)).findings).toEqual([]);
  });

  it.each<[string, string, string, RegExp]>([
    [
      'a list in brackets',
      'notice:',
      'meltFlow: [{value: 12 mm3/s, basis: assumed, reason: Bench habit}]\nnotice:',
      /its list "meltFlow" does not have one entry per line/,
    ],
  ])('refuses %s and changes nothing', async (_, from, to, reason) => {
    const registry = sampleRegistry();
    registry.edit(clover, from, to);
    const before = registry.read(clover);

    const { status, err } = await adopt(registry, 'wren-clover-petg-245');

    expect(status).toBe(2);
    expect(err).toMatch(reason);
    expect(err).toContain(`profiles/${clover} was not changed`);
    expect(registry.read(clover)).toBe(before);
  });

  it('refuses a profile in which nothing can be added without breaking it', async () => {
    const registry = sampleRegistry();
    const before = registry
      .read(clover)
      .replace(/\nnotice:.*\n$/, '\n')
      .replaceAll(/^(?=[^#])/gm, '  ');
    registry.write(clover, before);

    const { status, err } = await adopt(registry, 'wren-clover-petg-245');

    expect(status).toBe(2);
    expect(err).toContain('nothing can be added to it without breaking it');
    expect(registry.read(clover)).toBe(before);
  });

  it('refuses readings that have changed since, until the old digest is taken away by hand', async () => {
    const registry = sampleRegistry();
    await adopt(registry, 'wren-clover-petg-245');
    const before = registry.read(clover);
    registry.edit('trials/2026/wren-clover-petg-245.yaml', '[18, 400, 1.205]', '[18, 400, 1.21]');

    const { status, err } = await adopt(registry, 'wren-clover-petg-245');

    expect({ status, text: registry.read(clover) }).toEqual({ status: 2, text: before });
    expect(err).toMatch(/was not changed: meltFlow was adopted from other readings of this trial \(digest /);
    expect(err).toMatch(
      /\nCompare the readings with the bench sheet and put back what differs\. Only where /,
    );
    // The interval may be taken away with the digest, and nothing offers to adopt what nobody has compared.
    registry.write(clover, before.replace(/ {4}interval: .*\n/, ''));
    const { findings } = await checked(registry.cwd);
    expect(findings.map(({ rule }) => rule)).toEqual(['evidence/readings-changed']);
    expect(findings[0]?.help).toMatch(/^Compare the readings with the bench sheet/);

    registry.write(clover, before.replace(/ {4}readings: .*\n/, ''));
    expect((await adopt(registry, 'wren-clover-petg-245')).status).toBe(0);
    expect((await checked(registry.cwd)).findings).toEqual([]);
  });

  it('refuses to leave an interval beside a lower bound', async () => {
    const registry = sampleRegistry();
    await adopt(registry, 'wren-clover-petg-245');
    const before = registry.read(clover).replace(/ {4}readings: .*\n/, '');
    registry.write(clover, before);
    registry.edit(
      'trials/2026/wren-clover-petg-245.yaml',
      'commandedFlow: 28 mm3/s',
      'commandedFlow: 18 mm3/s',
    );

    const { status, err } = await adopt(registry, 'wren-clover-petg-245');

    expect(status).toBe(2);
    expect(err).toContain('Delete the line `interval`.');
    expect(registry.read(clover)).toBe(before);
  });

  it('writes a lower bound without an interval, and says that it is one', async () => {
    const registry = sampleRegistry();
    registry.edit(
      'trials/2026/wren-clover-petg-245.yaml',
      'commandedFlow: 28 mm3/s',
      'commandedFlow: 18 mm3/s',
    );

    await adopt(registry, 'wren-clover-petg-245');

    expect(registry.read(clover)).toMatch(/value: 1[46] mm3\/s\n {4}basis: measured\n/);
    expect(registry.read(clover)).toContain(
      'note: Lower bound; the ladder ended before the deficit was reached.',
    );
    expect((await checked(registry.cwd)).findings).toEqual([]);
  });

  it('does not touch the profile when the readings cannot be reduced', async () => {
    const registry = sampleRegistry();
    registry.edit('trials/2026/wren-clover-petg-245.yaml', 'extrudedMass: g}', 'extrudedMass: kg}');
    const before = registry.read(clover);

    expect((await adopt(registry, 'wren-clover-petg-245')).status).toBe(1);
    expect(registry.read(clover)).toBe(before);
  });
});
