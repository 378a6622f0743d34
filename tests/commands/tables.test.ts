import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCommand } from '../run-command.ts';
import { sampleRegistry } from '../sample-registry.ts';

const pairing = ['plumstead/wren', 'oakhollow/daisy-pla'];

function tables(cwd: string, ...args: string[]) {
  return runCommand(cwd, ['tables', ...args]);
}

describe('on standard output', () => {
  it('is text unless asked otherwise, with what to set in its first line, and no line beyond 80 columns', async () => {
    const { status, out, err } = await tables(sampleRegistry().cwd, ...pairing);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toMatch(
      /^Set the nozzle to 230 °C\. Largest flow 26 mm³\/s \(27\.4 to 28\.2, at 5 % deficit\),\nmeasured \(simulated\);/,
    );
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });

  it('is Markdown with --format markdown', async () => {
    const { status, out } = await tables(sampleRegistry().cwd, ...pairing, '--format', 'markdown');
    expect(status).toBe(0);
    expect(out).toMatch(
      /^# oakhollow\/daisy-pla on plumstead\/wren, nozzle hs-0\.6, policy house\n\nSet the nozzle to 230 °C\./,
    );
  });

  it('is CSV with --format csv', async () => {
    const { status, out } = await tables(sampleRegistry().cwd, ...pairing, '--format', 'csv');
    expect(status).toBe(0);
    expect(out).toMatch(/^feature,layerHeight \[mm\],/);
  });

  it('is JSON with --format json', async () => {
    const { status, out } = await tables(sampleRegistry().cwd, ...pairing, '--format', 'json');
    expect(status).toBe(0);
    expect(JSON.parse(out)).toMatchObject({
      machine: 'plumstead/wren',
      nozzle: { id: 'hs-0.6' },
      policy: 'house',
    });
  });

  it('names what it was derived from, with version and digest', async () => {
    const { out } = await tables(sampleRegistry().cwd, ...pairing, '--format', 'json');
    expect(
      JSON.parse(out).inputs.map(({ kind, id }: { kind: string; id: string }) => `${kind} ${id}`),
    ).toEqual([
      'machine plumstead/wren',
      'filament oakhollow/daisy-pla',
      'policy house',
      'polymer PLA',
      'trial wren-daisy-pla-215',
      'trial wren-daisy-pla-230',
    ]);
    for (const { sha256 } of JSON.parse(out).inputs) expect(sha256).toMatch(/^[0-9a-f]{64}$/);
  });

  it('carries the caution', async () => {
    const { out } = await tables(sampleRegistry().cwd, ...pairing);
    expect(out).toMatch(/never a\s+licence\s+to\s+exceed\s+a\s+limit\s+of\s+the\s+maker/);
  });

  it('is the same for a checkout with other line ends', async () => {
    const registry = sampleRegistry();
    const before = await tables(registry.cwd, ...pairing);
    for (const file of [
      'machines/plumstead/wren.yaml',
      'filaments/oakhollow/daisy-pla.yaml',
      'policies/house.yaml',
    ]) {
      registry.write(file, registry.read(file).replaceAll('\n', '\r\n'));
    }
    expect(await tables(registry.cwd, ...pairing)).toEqual(before);
  });
});

describe('--out', () => {
  const name = 'plumstead-wren--hs-0.6--oakhollow-daisy-pla--house';

  it('writes every form and names the files', async () => {
    const { cwd } = sampleRegistry();
    const { status, out } = await tables(cwd, ...pairing, '--out', 'made/here');
    const files = [
      ...[`${name}.csv`, `${name}.csv-metadata.json`],
      ...[`${name}--conditions.csv`, `${name}--conditions.csv-metadata.json`],
      ...[`${name}.json`, `${name}.md`, `${name}.html`, `${name}.xlsx`],
    ];
    expect(status).toBe(0);
    expect(out).toBe(files.map((file) => `made/here/${file}\n`).join(''));
    expect(readdirSync(join(cwd, 'made/here')).sort()).toEqual([...files].sort());
  });

  it('writes what standard output would show', async () => {
    const { cwd } = sampleRegistry();
    await tables(cwd, ...pairing, '--out', '.');
    for (const [format, ending] of [
      ['csv', 'csv'],
      ['json', 'json'],
      ['markdown', 'md'],
      ['html', 'html'],
    ] as const) {
      const { out } = await tables(cwd, ...pairing, '--format', format);
      expect(readFileSync(join(cwd, `${name}.${ending}`), 'utf8')).toBe(out);
    }
  });

  it('writes nothing where no table can be derived', async () => {
    const { cwd } = sampleRegistry();
    expect((await tables(cwd, 'plumstead/wern', 'oakhollow/daisy-pla', '--out', 'made')).status).toBe(2);
    expect(existsSync(join(cwd, 'made'))).toBe(false);
  });
});

describe('what is asked for in place of the policy', () => {
  const asked = (...args: string[]) => tables(sampleRegistry().cwd, ...pairing, ...args);
  const rows = async (...args: string[]) => JSON.parse((await asked(...args, '--format', 'json')).out).rows;

  it('is a nozzle temperature, with its unit in any spelling', async () => {
    for (const text of ['215 Cel', '215 °C', '488.15 K']) {
      for (const { nozzleTemperature } of await rows('--temperature', text)) {
        expect(nozzleTemperature).toEqual({ value: 215, unit: 'Cel' });
      }
    }
  });

  it('is layer heights and line widths, in mm or as shares of the nozzle', async () => {
    const sizes = await rows('--layer-height', '0.25 mm', '--layer-height', '50 %', '--line-width', '0.7 mm');
    expect(new Set(sizes.map((row: Record<string, { value: number }>) => row.layerHeight?.value))).toEqual(
      new Set([0.25, 0.3]),
    );
    expect(sizes[0].lineWidth.value).toBe(0.7);
  });

  it.each([
    [['--temperature', '215'], 'Write for instance "230 Cel".'],
    [['--temperature', '3 mm'], 'Write for instance "230 Cel".'],
    [['--layer-height', '0.2'], 'Write a size above 0 with its unit'],
    [['--layer-height', '-1 mm'], 'Write a size above 0 with its unit'],
    [['--line-width', '0 %'], 'Write a size above 0 with its unit'],
  ])('is refused in words where it cannot be read: %j', async (args, words) => {
    const { status, err } = await asked(...args);
    expect(status).toBe(2);
    expect(err).toContain(words);
  });

  it('is refused in words where it was not tested', async () => {
    const { status, err } = await asked('--temperature', '240 Cel');
    expect(status).toBe(2);
    expect(err).toContain('240 °C lies outside of what was tested: limits are known at 215 °C, 230 °C.');
  });

  it('is every tested temperature, in each form', async () => {
    expect((await asked('--all-temperatures')).out).toMatch(
      /^Limits are known at 2 nozzle temperatures; the table would be for 230 °C:/,
    );
    const json = JSON.parse((await asked('--all-temperatures', '--format', 'json')).out);
    expect(json.chosen.nozzleTemperature).toEqual({ value: 230, unit: 'Cel' });
    expect(json.tables).toHaveLength(2);
    const csv = (await asked('--all-temperatures', '--format', 'csv')).out.split('\r\n');
    expect(csv[0]).toMatch(/^tableTemperature \[Cel\],feature,/);
    expect(new Set(csv.slice(1, -1).map((line) => line.split(',')[0]))).toEqual(new Set(['215', '230']));
    expect((await asked('--all-temperatures', '--format', 'html')).status).toBe(2);
  });

  it('is every tested temperature in files of their own', async () => {
    const { cwd } = sampleRegistry();
    const { status } = await tables(cwd, ...pairing, '--all-temperatures', '--out', 'made');
    expect(status).toBe(0);
    expect(readdirSync(join(cwd, 'made')).filter((file) => file.endsWith('.html'))).toEqual([
      'plumstead-wren--hs-0.6--oakhollow-daisy-pla--house--215c.html',
      'plumstead-wren--hs-0.6--oakhollow-daisy-pla--house--230c.html',
    ]);
  });
});

describe('which nozzle', () => {
  it('is the one that has a measured limit', async () => {
    const { out } = await tables(sampleRegistry().cwd, ...pairing);
    expect(out).toContain('nozzle hs-0.6');
  });

  it('is the one that is named, on claims where nothing better is known', async () => {
    const registry = sampleRegistry();
    registry.edit(
      'machines/plumstead/wren.yaml',
      'at: {nozzle: hs-0.6, polymer: PLA, ',
      'at: {polymer: PLA, ',
    );
    const { out } = await tables(registry.cwd, ...pairing, '--nozzle', 'hs-0.4', '--format', 'json');
    expect(JSON.parse(out).nozzle).toEqual({ id: 'hs-0.4', diameter: { value: 0.4, unit: 'mm' } });
    const melting = JSON.parse(out).rows.filter(({ bound }: { bound: string }) => bound === 'melt');
    expect(new Set(melting.map(({ basis }: { basis: string }) => basis))).toEqual(new Set(['claimed']));
  });
});

describe('it cannot be derived, and says why', () => {
  const cases: [string, string[], string][] = [
    [
      'an unknown machine',
      ['plumstead/wern', 'oakhollow/daisy-pla'],
      'There is no machine "plumstead/wern".\nDid you mean "plumstead/wren"?',
    ],
    [
      'an unknown filament',
      ['plumstead/wren', 'oakhollow/dasy-pla'],
      'There is no filament "oakhollow/dasy-pla".\nDid you mean "oakhollow/daisy-pla"?',
    ],
    [
      'an unknown filament that is like no other',
      ['plumstead/wren', 'x'],
      'There is no filament "x".\nThere are: oakhollow/clover-petg, oakhollow/daisy-pla.',
    ],
    [
      'an unknown nozzle',
      [...pairing, '--nozzle', 'hs-0.7'],
      'There is no nozzle "hs-0.7".\nDid you mean "hs-0.4"?',
    ],
    [
      'an unknown policy',
      [...pairing, '--policy', 'hause'],
      'There is no policy "hause".\nDid you mean "house"?',
    ],
    [
      'a pairing with no limit',
      [...pairing, '--nozzle', 'hs-0.4'],
      'No melt flow is known for oakhollow/daisy-pla on plumstead/wren with nozzle hs-0.4.\nRun a flow ladder, reduce it and adopt its limit.',
    ],
  ];

  it.each(cases)('for %s', async (_, args, message) => {
    const { status, out, err } = await tables(sampleRegistry().cwd, ...args);
    expect({ status, out, err }).toEqual({ status: 2, out: '', err: `${message}\n` });
  });

  it('for a filament that does not fit the hot end', async () => {
    const registry = sampleRegistry();
    registry.edit('machines/plumstead/wren.yaml', 'filamentDiameter: 1.75 mm', 'filamentDiameter: 2.85 mm');
    const { status, err } = await tables(registry.cwd, ...pairing);
    expect(status).toBe(2);
    expect(err).toBe(
      'oakhollow/daisy-pla is a 1.75 mm filament, but plumstead/wren takes 2.85 mm there.\nChoose a filament or a machine of the same diameter.\n',
    );
  });

  it('for a registry with no policy', async () => {
    const registry = sampleRegistry();
    registry.remove('policies/house.yaml');
    const { status, err } = await tables(registry.cwd, ...pairing);
    expect({ status, err }).toEqual({
      status: 2,
      err: 'The registry holds no policy.\nAdd one under policies/.\n',
    });
  });

  it('for a registry with several policies of which none is named', async () => {
    const registry = sampleRegistry();
    registry.write(
      'policies/rush.yaml',
      registry.read('policies/house.yaml').replace('id: house', 'id: rush'),
    );
    const { status, err } = await tables(registry.cwd, ...pairing);
    expect({ status, err }).toEqual({
      status: 2,
      err: 'The registry holds several policies.\nName one with --policy: house, rush.\n',
    });
  });

  it.each([
    ['flowMargin: 10 %', 'flowMargin: 100 %', '`flowMargin` must be at least 0 % and below 100 %'],
    ['rounding: {speed: 1 mm/s,', 'rounding: {speed: -1 mm/s,', '`rounding.speed` must be above 0'],
    ['rounding: {speed: 1 mm/s,', 'rounding: {speed: 0 mm/s,', '`rounding.speed` must be above 0'],
    ['layerPath: 1.5 m', 'layerPath: 0 m', '`layerPath` must be above 0'],
    [
      '  outerContour: 75 %',
      '  outerContour: 750 %',
      '`fractions.outerContour` must be above 0 % and at most 100 %',
    ],
  ])('for a policy with %j written as %j', async (from, to, message) => {
    const registry = sampleRegistry();
    registry.edit('policies/house.yaml', from, to);
    const { status, out, err } = await tables(registry.cwd, ...pairing);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(`The policy "house" cannot be used: ${message}`);
  });

  it.each(['0 mm/s2', '-8200 mm/s2'])('for an acceleration of %s', async (acceleration) => {
    const registry = sampleRegistry();
    registry.edit('machines/plumstead/wren.yaml', '8200 mm/s2', acceleration);
    const { status, out, err } = await tables(registry.cwd, ...pairing);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain('No speed above 0 follows');
  });

  it('without a machine and a filament', async () => {
    const { status, err } = await tables(sampleRegistry().cwd, 'plumstead/wren');
    expect(status).toBe(2);
    expect(err).toContain("missing required argument 'filament'");
  });
});

describe('--template', () => {
  const withTemplate = async (name: string, text: string | Buffer, ...args: string[]) => {
    const { cwd } = sampleRegistry();
    writeFileSync(join(cwd, name), text);
    const outcome = await tables(cwd, ...pairing, '--template', name, ...args);
    return { ...outcome, cwd };
  };

  it('fills it on standard output', async () => {
    const { status, out } = await withTemplate('card.txt', '{{machine}}: {{#rows}}{{speed}} {{/rows}}\n');
    expect(status).toBe(0);
    expect(out).toMatch(/^plumstead\/wren: (\d+ )+\n$/);
  });

  it('writes it with --out, named after the table and the template', async () => {
    const { out, cwd } = await withTemplate('my card.XML.mustache', '<a>{{machine}}</a>', '--out', 'made');
    const name = 'plumstead-wren--hs-0.6--oakhollow-daisy-pla--house--my-card.xml';
    expect(out).toBe(`made/${name}\n`);
    expect(readFileSync(join(cwd, 'made', name), 'utf8')).toBe('<a>plumstead/wren</a>');
  });

  it('names every unknown variable with its place, and writes nothing', async () => {
    const { status, out, err, cwd } = await withTemplate('card.txt', '{{machin}}\n{{sped}}', '--out', 'made');
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toMatch(
      /^card\.txt:1:1: .*"machin" here\. Did you mean "machine"\?\ncard\.txt:2:1: .*"sped" here/,
    );
    expect(existsSync(join(cwd, 'made'))).toBe(false);
  });

  it('shows ten problems and counts the others', async () => {
    const { err } = await withTemplate('card.txt', '{{x}}'.repeat(25));
    expect(err.trim().split('\n')).toHaveLength(12);
    expect(err).toContain('… and 15 more');
  });

  it.each([
    ['a file that is not there', ['--template', 'no.txt'], 'no.txt cannot be read (ENOENT).'],
    ['a folder', ['--template', 'profiles'], 'profiles is a folder, not a template.'],
    ['--escape without a template', ['--escape', 'xml'], '--escape says how a template is filled'],
    ['a form as well', ['--template', 'x', '--format', 'csv'], 'cannot be used with'],
  ])('ends with status 2 for %s', async (_, args, message) => {
    const { status, out, err } = await tables(sampleRegistry().cwd, ...pairing, ...args);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(message);
  });

  it.each([
    ['no text', Buffer.from([0xff, 0xfe, 0x00]), 'card.txt is not UTF-8 text.'],
    ['far too large', Buffer.alloc(900_000, 'x'), 'too large for a template'],
  ])('ends with status 2 for a file that is %s', async (_, content, message) => {
    const { status, err } = await withTemplate('card.txt', content);
    expect(status).toBe(2);
    expect(err).toContain(message);
  });
});
