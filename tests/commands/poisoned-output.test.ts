/** @module-tag long */
import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { strFromU8, unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { runCommand } from '../run-command.ts';
import { type SampleRegistry, sampleRegistry } from '../sample-registry.ts';
import { dangersIn } from '../text/dangers.ts';

/** Stands in every poisoned text, so that a test sees that the text has arrived. */
const mark = 'POISON';

/** Clears the screen by C0 and by C1, turns the direction, hides, ends lines, commands a runner, marks up, calculates. */
const poison = `${mark}\u001B[2J\u009B2J\u202E\u2066\u200B\u{E0041}\u2028\n::error file=x::${mark}\r\n  ::stop-commands::${mark}\n##[error]${mark}\u0085\u0007<script>alert(1)</script>|[x](javascript:1)`;

/** As much of it as the schemas let stand in a text. */
const admitted = `::error::${mark}\u009B2J\u202E\u2066\u200B\u{E0041}\u2028::error::${mark} ##[error]${mark}\u0085<script>alert(1)</script>|[x](javascript:1)`;

/** The same as it can stand in the name of a file. */
const poisonedName = `::error::${mark}\u001B[2J\u009B2J\u202E\n::error::${mark} ##[error]`;

/** In a double-quoted scalar of YAML. */
const inYaml = (text: string) =>
  `"${[...JSON.stringify(text).slice(1, -1)]
    .map((character) =>
      character < '\u007F'
        ? character
        : `\\U${(character.codePointAt(0) ?? 0).toString(16).padStart(8, '0')}`,
    )
    .join('')}"`;

/** A registry that fits its schemas as far as they let texts be, poisoned wherever a text is free. */
function poisonedTexts(): SampleRegistry {
  const registry = sampleRegistry();
  for (const file of profilesOf(registry)) {
    const text = registry.read(file);
    registry.write(
      file,
      text
        .replace(/^(\s*(?:name|title|notice|maker|reason|author|locator): )(.*)$/gm, (_, key, value) => {
          return `${key}${inYaml(`${admitted} ${value}`)}`;
        })
        .replace(/reason: ([A-Z][a-z ]+)\}/g, (_, value) => `reason: ${inYaml(`${admitted} ${value}`)}}`)
        .replaceAll('26-0001', inYaml(`26-0001${admitted}`)),
    );
  }
  for (const file of ['filaments/oakhollow/daisy-pla.yaml', 'machines/plumstead/wren.yaml']) {
    const note = `{date: '2026-03-01', what: ${inYaml(admitted)}, effect: ${inYaml(admitted)}}`;
    registry.write(file, `${registry.read(file)}fieldNotes: [${note}]\n`);
  }
  return registry;
}

/** A registry that is broken wherever it can be: keys, values, units, references, comments, syntax, names of files. */
function poisonedShapes(): SampleRegistry {
  const registry = sampleRegistry();
  const daisy = registry.read('filaments/oakhollow/daisy-pla.yaml');
  const broken: Readonly<Record<string, string>> = {
    'unknown-key': `${daisy}${inYaml(poison)}: 1\n`,
    'nested-key': daisy.replace('diameter: 1.75 mm', `diameter: {${inYaml(poison)}: ${inYaml(poison)}}`),
    unit: daisy.replace('1.75 mm', inYaml(`1.75 ${poison}`)),
    reference: daisy.replaceAll('oakhollow-daisy-pla-sheet', inYaml(poison)),
    evidence: daisy.replaceAll('evidence: wren-daisy-pla-230', `evidence: ${inYaml(poison)}`),
    id: daisy.replace('id: oakhollow/daisy-pla', `id: ${inYaml(poison)}`),
    kind: daisy.replace('kind: filament', `kind: ${inYaml(poison)}`),
    version: daisy.replace('1.0.0', inYaml(poison)),
    date: daisy.replace('2026-02-10', inYaml(poison)),
    duplicate: `${daisy}${inYaml(poison)}: 1\n${inYaml(poison)}: 2\n`,
    anchor: `${daisy}x: *${mark}\u202E\u009B\n`,
    tag: `${daisy}x: !<::error::${mark}> 1\n`,
    directive: `%${mark} \u009B\u202E\n---\n${daisy}`,
    syntax: `${daisy}\t\u001B[2J${mark}: [\n  ::error::${mark}\n##[error]${mark}\n`,
    comment: daisy.replace('1.75 mm', `1.75  # \u009B2J\u202E ##[error]${mark}`),
    line: daisy.replace('diameter: 1.75 mm', `? ${inYaml(poison)}\n:\n  ::error::${mark}\u009B2J: 1`),
    acknowledged: `${daisy}acknowledged: [{rule: ${inYaml(poison)}, at: ${inYaml(`/${poison}`)}, found: ${inYaml(poison)}, reason: ${inYaml(poison)}, until: '2026-07-01'}]\n`,
  };
  for (const [name, text] of Object.entries(broken)) {
    registry.write(
      `filaments/oakhollow/${name}.yaml`,
      text.replace('id: oakhollow/daisy-pla', `id: oakhollow/${name}`),
    );
  }
  registry.write(`filaments/oakhollow/${poisonedName}.yaml`, daisy);
  registry.write(`${poisonedName}/x.yaml`, daisy);
  registry.write(
    'trials/2026/sheet.yaml',
    registry.read('trials/2026/wren-daisy-pla-230.yaml').replaceAll('wren-daisy-pla-230', 'sheet'),
  );
  registry.write(
    'trials/2026/sheet.csv',
    `commandedFlow [${mark}\u009B\u202E],"::error::${mark}\n::error::",extrudedMass [g]\n1,${mark}\u001B,2\n`,
  );
  return registry;
}

function profilesOf({ cwd }: SampleRegistry): string[] {
  return readdirSync(join(cwd, 'profiles'), { recursive: true, encoding: 'utf8' }).filter((file) =>
    file.endsWith('.yaml'),
  );
}

const pairing = ['plumstead/wren', 'oakhollow/daisy-pla'];

const questions: readonly (readonly string[])[] = [
  ...['text', 'json', 'sarif', 'junit', 'annotations', 'codeQuality', 'markdown', 'html'].flatMap(
    (format) => [
      ['check', '--format', format],
      ['check', '--acknowledged', '--format', format],
    ],
  ),
  ...['text', 'csv', 'json', 'markdown', 'html'].map((format) => ['tables', ...pairing, '--format', format]),
  ['tables', ...pairing, '--all-temperatures'],
  ['tables', ...pairing, '--out', 'out/tables'],
  ['tables', ...pairing, '--template', 'template.txt'],
  ['tables', '--all', '--out', 'out/all'],
  ['site', '--out', 'out/site'],
  ['export', '--out', 'out/export'],
  ...['text', 'markdown', 'html'].flatMap((format) => [
    ['report', 'wren-daisy-pla-230', '--format', format],
    ['report', 'wren-daisy-pla-230', '--laboratory', poison, '--format', format],
  ]),
  ...['text', 'markdown', 'csv', 'json', 'trial'].map((format) => ['plan', ...pairing, '--format', format]),
  ['plan', ...pairing, '--out', `out/${poisonedName}`],
  ...['text', 'json', 'markdown'].flatMap((format) => [
    ['reduce', 'wren-daisy-pla-230', '--format', format],
    ['reduce', ...pairing, '--format', format],
    ['match', '--format', format],
    ['match', 'oakhollow/daisy-pla', '--format', format],
    ['compare', 'hook', pairing.join('+'), '--format', format],
    ['claims', 'plumstead/wren', '--format', format],
    ['diff', 'HEAD~1', '--format', format],
    ['rules', 'identity/id-path', '--format', format],
  ]),
  ['reduce', 'profiles/trials/2026/wren-daisy-pla-230.csv'],
  ['reduce', 'profiles/trials/2026/sheet.csv'],
  ['reduce', 'sheet'],
  ['index'],
  ['index', '--out', `out/${poisonedName}.json`],
  ['index', '--verify', 'index.json'],
  ['migrate', '--dry-run'],
  ['new', 'filament', 'oakhollow/new', '--set', `name=${poison}`, '--no-ask', '--dry-run'],
  ['new', 'filament', 'oakhollow/new', '--set', `maker=${poison}`, '--no-ask'],
  ['init', `out/${poisonedName}`],
  ['check', '--fix'],
];

/** Every place of a command line that takes a word, with a poisoned one. */
const poisonedOptions: readonly (readonly string[])[] = [
  [poison],
  [`--${poison}`],
  ['check', poison],
  ['check', '-', '--stdin-path', poison],
  ...['--registry', '--changed', '--shard', '--format', '--fail-on', '--today', poison].map((name) => [
    'check',
    name,
    poison,
  ]),
  ['reduce', poison],
  ...['--nozzle', '--at', '--method', '--plot', '--density'].map((name) => [
    'reduce',
    ...pairing,
    name,
    poison,
  ]),
  ['tables', poison, poison],
  ...[
    '--nozzle',
    '--policy',
    '--temperature',
    '--layer-height',
    '--batch',
    '--format',
    '--explain',
    '--template',
    '--out',
  ].map((name) => ['tables', ...pairing, name, poison]),
  ['plan', poison, poison],
  ...['--method', '--setting', '--nozzle', '--after', '--out'].map((name) => [
    'plan',
    ...pairing,
    name,
    poison,
  ]),
  ['match', poison],
  ['match', '--machine', poison],
  ['compare', poison, poison],
  ['compare', 'hook', pairing.join('+'), '--hour-value', poison],
  ['claims', poison],
  ['diff', poison],
  ['new', poison, poison],
  ['new', 'filament', poison, '--no-ask'],
  ['new', 'filament', 'a/b', '--set', poison, '--no-ask'],
  ['new', 'trial', 'a', '--from', poison],
  ['index', poison],
  ['site', '--out', poison],
  ['export', '--out', poison],
  ['export', '--out', 'out', '--policy', poison],
  ['report', poison],
  ['site', '--out', 'out', '--registry', poison],
  ['index', '--verify', poison],
  ['migrate', poison],
  ['rules', poison],
  ['completion', poison],
  ['init', poison],
];

/** Runs every command line with colours and without, and returns what is wrong with what it prints and how often the poison arrived. */
async function printed(cwd: string, lines: readonly (readonly string[])[]) {
  const dangers: string[] = [];
  const arrived: string[] = [];
  for (const args of lines) {
    for (const colour of colourings(args)) {
      const { out, err } = await runCommand(cwd, args, { colour, stdin: `kind: ${inYaml(poison)}\n` });
      const shown = colour ? withoutColours(`${out}\n${err}`) : `${out}\n${err}`;
      dangers.push(...dangersOf(args, shown));
      if (shown.includes(mark)) arrived.push(args.join(' '));
      if (isJson(args)) JSON.parse(out || '{}');
    }
  }
  return { dangers, arrived: arrived.length };
}

/** Without colours, and with them where a command line answers in the form for people, the only one that has any. */
function colourings(args: readonly string[]): boolean[] {
  const at = args.indexOf('--format');
  return at === -1 || args[at + 1] === 'text' ? [false, true] : [false];
}

function isJson(args: readonly string[]): boolean {
  return args.includes('json') || args.includes('sarif');
}

function dangersOf(args: readonly string[], shown: string): string[] {
  const commands = args.includes('annotations');
  return [...dangersIn(shown, { commands }), ...(commands ? strangeCommands(shown) : [])].map(
    (danger) => `${args.join(' ')}: ${danger}`,
  );
}

/** Colours and weights that hide nothing and move nothing. */
function withoutColours(text: string): string {
  return text.replaceAll(new RegExp(`${String.fromCharCode(27)}\\[(?:1|2|3|22|23|31|32|33|36|39)m`, 'g'), '');
}

/** Workflow commands that a report of annotations does not write. */
function strangeCommands(text: string): string[] {
  return text
    .split('\n')
    .filter(
      (line) =>
        line.trimStart().startsWith('::') && !/^::(?:error|warning|notice) (?:file|title)=/.test(line),
    );
}

/** Everything that commands have written below a folder, but for tables of data, where a text is no more than that. */
function writtenTexts(folder: string): [string, string][] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((file) => join(folder, file))
    .filter((path) => statSync(path).isFile() && !path.endsWith('.parquet'))
    .flatMap((path): [string, string][] =>
      path.endsWith('.xlsx') ? textsOfWorkbook(path) : [[path, readFileSync(path, 'utf8')]],
    );
}

/** A workbook is an archive of texts. */
function textsOfWorkbook(path: string): [string, string][] {
  const parts = Object.entries(unzipSync(readFileSync(path)));
  return parts.map(([name, bytes]) => [`${path}: ${name}`, strFromU8(bytes)]);
}

function poisonedFolder(registry: SampleRegistry): string {
  const { cwd } = registry;
  writeFileSync(
    join(cwd, 'template.txt'),
    `{{machine}} {{filament}} {{#quirks}}{{.}}{{/quirks}} ::error::${mark}\n::error::${mark}\u001B\n`,
  );
  writeFileSync(
    join(cwd, 'index.json'),
    JSON.stringify({ format: 'meltbounds-index/1', files: [{ path: poison, digest: poison }] }),
  );
  mkdirSync(join(cwd, 'out'));
  const git = (...args: string[]) =>
    spawnSync('git', ['-c', 'user.name=a', '-c', 'user.email=a@b', ...args], { cwd });
  git('init', '-q');
  git('add', 'profiles');
  git('commit', '-qm', 'a');
  const [first = ''] = profilesOf(registry).filter((file) => file.endsWith('daisy-pla.yaml'));
  registry.write(
    first,
    registry
      .read(first)
      .replace('22 mm3/s', '21 mm3/s')
      .replace('polymer: PLA', `polymer: ${inYaml(poison)}`),
  );
  git('commit', '-qam', 'b');
  registry.write(first, registry.read(first).replace(/polymer: .*/, 'polymer: PLA'));
  return cwd;
}

describe('whatever a stranger writes is shown, and does nothing:', () => {
  it('texts in profiles', { tags: 'long', timeout: 300_000 }, async () => {
    const cwd = poisonedFolder(poisonedTexts());
    const { dangers, arrived } = await printed(cwd, questions);
    expect(dangers).toEqual([]);
    expect(arrived).toBeGreaterThan(30);
    for (const [path, text] of writtenTexts(join(cwd, 'out'))) {
      // A file is no log: no runner looks for commands in it.
      const dangers = dangersIn(text, { commands: true }).filter(
        (danger) => !danger.includes('inner command'),
      );
      expect(dangers.map((danger) => `${path}: ${danger}`)).toEqual([]);
    }
  });

  it('keys, values, syntax and names of files', { tags: 'long', timeout: 300_000 }, async () => {
    const cwd = poisonedFolder(poisonedShapes());
    const { dangers, arrived } = await printed(cwd, questions);
    expect(dangers).toEqual([]);
    expect(arrived).toBeGreaterThan(30);
  });

  it('options and arguments', async () => {
    const { dangers, arrived } = await printed(sampleRegistry().cwd, poisonedOptions);
    expect(dangers).toEqual([]);
    expect(arrived).toBeGreaterThan(30);
  }, 300_000);

  it.each([
    ['names', { registries: [poison] }],
    ['ways out', { registries: [`../${poison}`] }],
  ])('%s in package.json', async (_, meltbounds) => {
    const { cwd } = sampleRegistry();
    writeFileSync(join(cwd, 'package.json'), JSON.stringify({ meltbounds }));
    const { dangers, arrived } = await printed(cwd, [['check'], ['match'], ['index']]);
    expect(dangers).toEqual([]);
    expect(arrived).toBeGreaterThan(0);
  });
});
