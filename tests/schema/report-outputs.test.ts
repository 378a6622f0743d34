import { cpSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
import { runCommand } from '../run-command.ts';
import { type SampleRegistry, sampleRegistry } from '../sample-registry.ts';

const ajv = new Ajv({ strict: true, allErrors: true, allowUnionTypes: true });

function validatorOf(output: string) {
  const path = new URL(`../../schema/output/${output}.schema.json`, import.meta.url);
  return ajv.compile(JSON.parse(readFileSync(path, 'utf8')));
}

const validators = {
  comparison: validatorOf('comparison'),
  diff: validatorOf('diff'),
  reduction: validatorOf('reduction'),
  'limit-line': validatorOf('limit-line'),
  check: validatorOf('check'),
  rules: validatorOf('rules'),
} as const;

type Output = keyof typeof validators;

function faultsOf(output: Output, text: string) {
  const validate = validators[output];
  validate(JSON.parse(text));
  return validate.errors ?? [];
}

const demo = fileURLToPath(new URL('../../profiles', import.meta.url));
const lantern = 'brackwater/lantern:hs-0.4+ashgrove/stagecraft-pla';
const steeple = 'tollwick/steeple:hs-0.4+ashgrove/stagecraft-pla';
const pairing = ['reduce', 'brackwater/lantern', 'ashgrove/stagecraft-pla', '--nozzle'];

describe('the JSON of the demo registry fits its published schema:', () => {
  it.each<[Output, string[]]>([
    [
      'comparison',
      [
        'compare',
        'mask-rack',
        lantern,
        steeple,
        '--policy',
        'workshop',
        '--jobs',
        '2000',
        '--hour-value',
        '38 EUR',
      ],
    ],
    [
      'comparison',
      ['compare', 'giant-helmet', 'emberlow/hearth+quillmere/rigging-abs', '--policy', 'prototype'],
    ],
    ['reduction', ['reduce', 'lantern-stagecraft-pla-230']],
    ['reduction', ['reduce', 'barge-stagecraft-pla-285-225']],
    ['reduction', ['reduce', 'hearth-rigging-abs-contour']],
    ['reduction', ['reduce', 'skiff-stagecraft-pla-layer-time']],
    ['reduction', ['reduce', 'lantern-stagecraft-petg-sweep']],
    ['reduction', ['reduce', 'lantern-sound']],
    ['reduction', ['reduce', 'pulley-pa12-drying']],
    ['reduction', ['reduce', 'boards-pla-wd20-diameter']],
    ['reduction', ['reduce', 'lantern-mask-rack']],
    ['limit-line', [...pairing, 'hs-0.6', '--at', '235 Cel']],
    ['limit-line', [...pairing, 'hs-0.6', '--at', '250 Cel', '--extrapolate']],
    ['limit-line', [...pairing, 'hs-0.4']],
    ['check', ['check']],
  ])('%s: %j', async (output, args) => {
    const { out } = await runCommand(demo, [...args, '--registry', demo, '--format', 'json']);
    expect(faultsOf(output, out)).toEqual([]);
  });

  it('rules', async () => {
    const { out } = await runCommand(demo, ['rules', '--format', 'json']);
    expect(faultsOf('rules', out)).toEqual([]);
  });
});

describe('so does', () => {
  it('a reduction of a bare sheet', async () => {
    const { cwd, write } = sampleRegistry();
    write(
      'diameter.csv',
      'position [m],firstDiameter [mm],secondDiameter [mm]\n0,1.741,1.752\n1,1.749,1.755\n2,1.75,1.756\n3,1.742,1.749\n4,1.741,1.75\n5,1.745,1.753\n',
    );
    const facts = [
      '--method',
      'diameterSurvey',
      '--diameter',
      '1.75 mm',
      '--resolution',
      '0.001 mm',
      '--tolerance',
      '0.03 mm',
      '--accuracy',
      '0.004 mm',
    ];
    const { out } = await runCommand(cwd, ['reduce', 'profiles/diameter.csv', ...facts, '--format', 'json']);
    expect(faultsOf('reduction', out)).toEqual([]);
  });

  it('a reduction of a sheet as a spreadsheet saves it, with how it was understood', async () => {
    const { cwd, write } = sampleRegistry();
    write(
      'ladder.csv',
      'commanded flow (mm3/s);feed length mm;mass g;note\n10;200;0,59;ok\n20;200;0,59;\n30;200;0,585;\n34;200;0,57;rubs\n38;200;0,54;\n42;200;0,5;\n',
    );
    const facts = ['--diameter', '1.75 mm', '--density', '1.24 g/cm3', '--format', 'json'];
    const { out } = await runCommand(cwd, ['reduce', 'profiles/ladder.csv', ...facts]);
    expect(faultsOf('reduction', out)).toEqual([]);
    expect(JSON.parse(out).sheet).toMatchObject({
      separator: ';',
      decimal: ',',
      rows: 6,
      notes: [
        { line: 2, text: 'ok' },
        { line: 5, text: 'rubs' },
      ],
    });
    expect(JSON.parse(out).sheet.columns[2]).toEqual({ heading: 'mass g', name: 'extrudedMass', unit: 'g' });
  });

  it('a check that finds something', async () => {
    const registry = sampleRegistry();
    registry.edit('filaments/oakhollow/daisy-pla.yaml', 'diameter: 1.75 mm', 'diameter: 1.75 s');
    const { status, out } = await runCommand(registry.cwd, ['check', '--format', 'json']);
    expect(status).toBe(1);
    expect(faultsOf('check', out)).toEqual([]);
  });
});

describe('the JSON of a difference fits its published schema', () => {
  const daisy = 'filaments/oakhollow/daisy-pla.yaml';
  const wren = 'machines/plumstead/wren.yaml';
  const house = 'policies/house.yaml';
  const trial = 'trials/2026/wren-daisy-pla-215.yaml';

  async function differenceAfter(change: (registry: SampleRegistry) => void): Promise<string> {
    const registry = sampleRegistry();
    cpSync(join(registry.cwd, 'profiles'), join(registry.cwd, 'base'), { recursive: true });
    change(registry);
    return (await runCommand(registry.cwd, ['diff', 'base', 'profiles', '--format', 'json'])).out;
  }

  it.each<[string, (registry: SampleRegistry) => void]>([
    ['nothing', () => {}],
    ['a limit', ({ edit }) => edit(daisy, 'value: 22 mm3/s', 'value: 21 mm3/s')],
    ['a range', ({ edit }) => edit(daisy, '50..60 Cel', '52..60 Cel')],
    [
      'a nozzle',
      ({ edit }) => edit(wren, '      - {id: hs-0.4, diameter: 0.4 mm, material: hardenedSteel}\n', ''),
    ],
    [
      'a sum of money',
      ({ edit }) =>
        edit(
          wren,
          'spool: {mass: 1 kg}',
          'price:\n  - {value: 900 EUR, basis: claimed, source: plumstead-wren-sheet}\nspool: {mass: 1 kg}',
        ),
    ],
    ['a list of house rules', ({ edit }) => edit(house, '[25 %, 50 %, 70 %]', '[25 %, 60 %]')],
    ['a word', ({ edit }) => edit(daisy, 'name: Daisy PLA', 'name: Daisy')],
    ['a version alone', ({ edit }) => edit(daisy, 'version: 1.0.0', 'version: 1.0.1')],
    ['a trial', ({ edit }) => edit(trial, "date: '2026-02-10'", "date: '2026-02-09'")],
    ['a file that cannot be read', ({ edit }) => edit(daisy, 'diameter: 1.75 mm', 'diameter: 1.75 s')],
    ['a profile that is gone', ({ remove }) => remove(wren)],
  ])('where it is of %s', async (_, change) => {
    expect(faultsOf('diff', await differenceAfter(change))).toEqual([]);
  });
});

it.each(Object.keys(validators) as Output[])('an empty object is no %s', (output) => {
  expect(faultsOf(output, '{}')).not.toEqual([]);
});

it('the page on outputs names every published schema with its form', () => {
  const folder = new URL('../../schema/output/', import.meta.url);
  const page = readFileSync(new URL('../../docs/json-outputs.md', import.meta.url), 'utf8');
  for (const file of readdirSync(folder)) {
    const { properties } = JSON.parse(readFileSync(new URL(file, folder), 'utf8'));
    const row = page.split('\n').find((line) => line.startsWith(`| [\`${file}\`]`));
    expect(row, file).toContain(`\`${properties.format.const}\``);
  }
});
