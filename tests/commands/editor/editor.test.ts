import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { type SampleRegistry, sampleRegistry, temporaryFolder } from '../../sample-registry.ts';
import { type Action, type Diagnostic, EditorClient, type Position, type Range } from './editor-client.ts';

const daisy = 'filaments/oakhollow/daisy-pla.yaml';
const wren = 'machines/plumstead/wren.yaml';

let registry: SampleRegistry;
let editor: EditorClient;
let files = 0;

beforeAll(async () => {
  registry = sampleRegistry(realpathSync(mkdtempSync(join(tmpdir(), 'meltbounds-'))));
  editor = new EditorClient(registry.cwd);
  await editor.initialize(registry.cwd, { workspace: { workspaceEdit: { documentChanges: true } } });
});

afterAll(async () => {
  await editor.stop();
  rmSync(registry.cwd, { recursive: true, force: true });
});

const start: Position = { line: 0, character: 0 };
const whole: Range = { start, end: { line: 10_000, character: 0 } };

/** The text of a profile, with some of it replaced. */
function edited(file: string, from: string, to: string): string {
  const text = registry.read(file);
  expect(text).toContain(from);
  return text.replace(from, to);
}

function positionOf(text: string, stretch: string, shift = 0): Position {
  return TextDocument.create('', '', 0, text).positionAt(text.indexOf(stretch) + shift);
}

function rangeOf(text: string, stretch: string): Range {
  return { start: positionOf(text, stretch), end: positionOf(text, stretch, stretch.length) };
}

function open(file: string, text: string): string {
  return editor.open(registry.path(file), text);
}

function codes(diagnostics: readonly Diagnostic[]): string[] {
  return diagnostics.map(({ code }) => code);
}

/** A text after an action of the editor. */
function applied(text: string, { edit }: Action): string {
  const edits =
    edit.documentChanges?.flatMap((change) => change.edits) ?? Object.values(edit.changes ?? {}).flat();
  return TextDocument.applyEdits(TextDocument.create('', '', 0, text), [...edits]);
}

/** Opens an unsaved filament that ends with a cursor, written as `|`, and asks what may stand there. */
async function offered(kind: string, marked: string): Promise<string[] | null> {
  const folder =
    {
      filament: 'filaments/oakhollow',
      trial: 'trials/2026',
      machine: 'machines/plumstead',
      addition: 'additions',
    }[kind] ?? '';
  const [before = '', after = ''] = `kind: ${kind}\n${marked}`.split('|');
  const uri = open(`${folder}/unsaved-${files++}.yaml`, before + after);
  const items = await editor.complete(uri, positionOf(`${before}|${after}`, '|'));
  editor.close(uri);
  return items === null ? null : items.map(({ label }) => label);
}

describe('an open profile', () => {
  it('is clean as it stands', async () => {
    const uri = open(daisy, registry.read(daisy));
    expect(await editor.diagnostics(uri, 1)).toEqual([]);
    editor.close(uri);
  });

  it('shows a slip at its place, before it is saved, and no longer once it is fixed', async () => {
    const text = edited(daisy, 'value: 26 mm3/s', 'value: 46 mm3/s');
    const uri = open(daisy, text);
    const [first, ...more] = await editor.diagnostics(uri, 1);
    expect(more).toEqual([]);
    expect(first).toMatchObject({
      code: 'evidence/unsupported',
      severity: 1,
      source: 'meltbounds',
      range: rangeOf(text, '46 mm3/s'),
      codeDescription: { href: expect.stringMatching(/evidence-unsupported\.md$/) },
      message: expect.stringMatching(
        /^The limit 46 mm³\/s is above .*\nallowed: up to .*\nbecause: JCGM.*\nfix: Compare/,
      ),
    });
    editor.replace(uri, registry.read(daisy), 2);
    expect(await editor.diagnostics(uri, 2)).toEqual([]);
    editor.close(uri);
  });

  it('is judged beside another one as it stands in the editor', async () => {
    const uri = open(daisy, registry.read(daisy));
    expect(await editor.diagnostics(uri, 1)).toEqual([]);
    const trial = 'trials/2026/wren-daisy-pla-230.yaml';
    const beside = await editor.nextDiagnostics(uri, () =>
      open(trial, edited(trial, 'nozzleTemperature: 230 Cel', 'nozzleTemperature: 229 Cel')),
    );
    expect(codes(beside)).toContain('evidence/other-conditions');
    editor.close(pathToFileURL(registry.path(trial)).href);
    editor.close(uri);
  });

  it('says what is wrong with broken YAML, and what rules find once it can be read', async () => {
    const uri = open(daisy, `${registry.read(daisy)}\t- [`);
    expect(codes(await editor.diagnostics(uri, 1))).toEqual(expect.arrayContaining(['syntax/yaml']));
    editor.replace(uri, edited(daisy, '230 Cel', '448 Cel'), 2);
    expect(codes(await editor.diagnostics(uri, 2)).length).toBeGreaterThan(0);
    expect(codes(await editor.diagnostics(uri, 2)).join()).not.toContain('syntax');
    editor.close(uri);
  });

  it('counts in UTF-16, whatever stands before, and with any line ends', async () => {
    const slip = edited(daisy, '{value: 1.24 g/cm3,', '{note: "𝄞 ü\u0301", value: 1.24,');
    const text = `\uFEFF"𝄞": 1\n${slip}`.replaceAll('\n', '\r\n');
    const uri = open(daisy, text);
    const found = (await editor.diagnostics(uri, 1)).map(({ code, range }) => [code, range]);
    expect(found).toContainEqual(['shape/unknown-key', rangeOf(text, '"𝄞"')]);
    expect(found).toContainEqual(['units/bare-number', rangeOf(text, '1.24')]);
    expect(rangeOf(text, '"𝄞"').start.character).toBe(1);
    editor.close(uri);
  });

  it('of the newest version only, however fast one types', async () => {
    const uri = open(daisy, registry.read(daisy));
    for (let version = 2; version <= 30; version++)
      editor.replace(uri, edited(daisy, '26 mm3/s', `${version + 30} mm3/s`), version);
    editor.replace(uri, registry.read(daisy), 31);
    expect(await editor.diagnostics(uri, 31)).toEqual([]);
    editor.close(uri);
  });

  it('takes changes of a part of the text', async () => {
    const text = registry.read(daisy);
    const uri = open(daisy, text);
    const range = rangeOf(text, '26 mm3/s');
    const contentChanges = [
      { range, text: '2' },
      { range: { start: range.start, end: range.start }, text: '4' },
      {
        range: {
          start: { ...range.start, character: range.start.character + 2 },
          end: { ...range.start, character: range.start.character + 2 },
        },
        text: ' mm3/s',
      },
    ];
    editor.notify('textDocument/didChange', { textDocument: { uri, version: 2 }, contentChanges });
    expect((await editor.diagnostics(uri, 2))[0]?.message).toContain('The limit 42 mm³/s');
    editor.close(uri);
  });

  it('has nothing said of it any longer once it is closed', async () => {
    const uri = open(daisy, edited(daisy, 'value: 26 mm3/s', 'value: 46 mm3/s'));
    expect(await editor.diagnostics(uri, 1)).toHaveLength(1);
    expect(await editor.nextDiagnostics(uri, () => editor.close(uri))).toEqual([]);
  });
});

describe('fixes', () => {
  const messy = () => {
    const text = edited(wren, '430 mm/s', '430mm/s').replace('8200 mm/s2', '8200 mm/s²');
    return text.replace(/^(name: .*\n)(maker: .*\n)/m, '$2$1');
  };

  it('are offered where they are due, change no more than that, and leave nothing behind', async () => {
    let text = messy();
    const uri = open(wren, text);
    const diagnostics = await editor.diagnostics(uri, 1);
    expect(codes(diagnostics)).toEqual(['style/key-order', 'style/unit-spelling', 'style/unit-spelling']);
    const at = positionOf(text, '430mm/s', 2);
    const here = await editor.actions(uri, { start: at, end: at }, { diagnostics, only: ['quickfix'] });
    expect(here).toMatchObject([
      {
        title: 'Write `430 mm/s` for `430mm/s`',
        kind: 'quickfix',
        diagnostics: [{ code: 'style/unit-spelling' }],
        edit: {
          documentChanges: [{ textDocument: { version: 1 }, edits: [{ range: rangeOf(text, '430mm/s') }] }],
        },
      },
    ]);
    text = applied(text, here[0]!);
    expect(text).toContain('430 mm/s');
    editor.replace(uri, text, 2);
    expect(codes(await editor.diagnostics(uri, 2))).toEqual(['style/key-order', 'style/unit-spelling']);

    const all = await editor.actions(uri, whole, { diagnostics: [], only: ['source.fixAll'] });
    expect(all.map(({ kind }) => kind)).toEqual(['source.fixAll.meltbounds']);
    text = applied(text, all[0]!);
    expect(text).toBe(registry.read(wren));
    editor.replace(uri, text, 3);
    expect(await editor.diagnostics(uri, 3)).toEqual([]);
    expect(await editor.actions(uri, whole)).toEqual([]);
    editor.close(uri);
  });

  it('put keys in order by themselves', async () => {
    const text = registry.read(wren).replace(/^(name: .*\n)(maker: .*\n)/m, '$2$1');
    const uri = open(wren, text);
    const actions = await editor.actions(uri, whole, { diagnostics: [], only: ['quickfix'] });
    expect(actions.map(({ title }) => title)).toEqual(['Put the keys in the order of the schema']);
    const lines = actions[0]?.edit.documentChanges?.[0]?.edits.map(
      ({ range }) => range.end.line - range.start.line,
    );
    expect(lines).toEqual([2]);
    expect(applied(text, actions[0]!)).toBe(registry.read(wren));
    editor.close(uri);
  });

  it('are none while the syntax is broken', async () => {
    const uri = open(wren, `${messy()}\n]`);
    expect(await editor.actions(uri, whole)).toEqual([]);
    editor.close(uri);
  });
});

describe('completion offers', () => {
  it.each([
    ['source', 'filament', 'sheet: |', 'oakhollow-daisy-pla-sheet'],
    ['polymer', 'filament', 'polymer: |', 'PLA'],
    [
      'trial',
      'filament',
      'meltFlow:\n  - value: 1 mm3/s\n    evidence: |\n    basis: measured',
      'wren-daisy-pla-230',
    ],
    ['machine', 'trial', 'machine: plum|', 'plumstead/wren'],
    ['filament', 'trial', "filament: '|'", 'oakhollow/daisy-pla'],
    ['filament of an addition', 'addition', 'filament: |', 'oakhollow/daisy-pla'],
    ['job', 'trial', 'job: |', 'hook'],
    [
      'nozzle of the machine beside it',
      'filament',
      'meltFlow:\n  - value: 1 mm3/s\n    at: {machine: plumstead/wren, nozzle: |}',
      'hs-0.6',
    ],
    ['nozzle of any machine', 'trial', 'nozzle: |\nmachine:', 'hs-0.6'],
  ])('a %s', async (_, kind, marked, id) => {
    expect(await offered(kind, marked)).toContain(id);
  });

  it('ids while the rest of the text is broken', async () => {
    expect(await offered('filament', 'sheet: oak|\ndensity: [\n  - }')).toContain(
      'oakhollow-daisy-pla-sheet',
    );
  });

  it('what fits what is typed, those first that are about the document, in the place of what stands there', async () => {
    const text = edited(daisy, 'evidence: wren-daisy-pla-230', 'evidence: wren');
    const uri = open(daisy, text);
    const items = await editor.complete(uri, positionOf(text, 'evidence: wren\n', 'evidence: wren'.length));
    expect(items?.map(({ label }) => label).slice(0, 1)).toEqual(['wren-daisy-pla-215']);
    expect(items?.every(({ label, detail }) => `${label} ${detail}`.includes('wren'))).toBe(true);
    const [first] = items ?? [];
    expect(first?.textEdit.range).toEqual({
      start: positionOf(text, 'wren\n'),
      end: positionOf(text, 'wren\n', 4),
    });
    editor.close(uri);
  });

  it('nothing where no id belongs', async () => {
    for (const marked of ['name: |', 'notice: |', '|', 'density:\n  - value: |', '# sheet: |', 'sheet|: x'])
      expect(await offered('filament', marked)).toBeNull();
  });
});

describe('hovering tells', () => {
  it('what an id stands for', async () => {
    const text = registry.read(daisy);
    const uri = open(daisy, text);
    await editor.diagnostics(uri, 1);
    expect(await editor.hover(uri, positionOf(text, 'wren-daisy-pla-230', 3))).toMatch(
      /^trial wren-daisy-pla-230: flowLadder, plumstead\/wren, hs-0\.6/,
    );
    expect(await editor.hover(uri, positionOf(text, 'name:', 1))).toBeNull();
    editor.close(uri);
  });

  it('why a rule is there, at what it finds', async () => {
    const text = edited(daisy, 'spoolMass: 1 kg', 'spoolMass: 1');
    const uri = open(daisy, text);
    await editor.diagnostics(uri, 1);
    expect(await editor.hover(uri, positionOf(text, 'spoolMass: 1', 11))).toMatch(/^# units\/bare-number\n/);
    editor.close(uri);
  });
});

describe('files that are no profiles', () => {
  it.each([
    ['outside of the registry', 'compose.yaml', 'services: {web: {}}\n'],
    ['of another program in a folder of the same name', 'ci/jobs/deploy.yaml', 'kind: Job\nsteps: []\n'],
  ])('%s are left alone', async (_, file, text) => {
    const uri = editor.open(join(registry.cwd, file), text);
    expect(await editor.diagnostics(uri, 1)).toEqual([]);
    expect(await editor.complete(uri, start)).toBeNull();
    expect(await editor.actions(uri, whole)).toEqual([]);
    editor.close(uri);
  });

  it('but name one of our kinds are judged wherever they are', async () => {
    const uri = editor.open(join(temporaryFolder(), 'elsewhere.yaml'), 'kind: job\nid: hook\n');
    expect(codes(await editor.diagnostics(uri, 1))).toContain('shape/missing-key');
    editor.close(uri);
  });

  it('without a name on this machine are left alone', async () => {
    const text = 'kind: job\n';
    for (const uri of [
      'untitled:Untitled-1',
      'file://other-host/x.yaml',
      'git:/x?y',
      'file:///a%2Fb.yaml',
      'no address',
      '%%%',
    ]) {
      editor.notify('textDocument/didOpen', { textDocument: { uri, languageId: 'yaml', version: 1, text } });
      expect(await editor.diagnostics(uri, 1)).toEqual([]);
      editor.close(uri);
    }
  });

  it('are refused where they are too large', async () => {
    const uri = open(daisy, `${registry.read(daisy)}# ${'x'.repeat(1_100_000)}\n`);
    expect(codes(await editor.diagnostics(uri, 1))).toEqual(['file/too-large']);
    expect(await editor.complete(uri, start)).toBeNull();
    editor.close(uri);
  });
});

describe('what a stranger has written', () => {
  it('cannot steer the editor by what messages quote', async () => {
    const uri = open(daisy, edited(daisy, '1 kg', '"1 \\u202ekg\\u001b[31m"'));
    const found = await editor.diagnostics(uri, 1);
    expect(found.length).toBeGreaterThan(0);
    for (const { message } of found)
      for (const sign of ['\u202e', '\u001b']) expect(message).not.toContain(sign);
    editor.close(uri);
  });

  it('cannot nest too deep for completion', async () => {
    expect(await offered('filament', `sheet: ${'['.repeat(20_000)}|`)).toBeNull();
  });
});

describe('files on the disk', () => {
  it('that change, come and go are seen when the editor tells of it, or something is typed', async () => {
    const uri = open(daisy, registry.read(daisy));
    expect(await editor.diagnostics(uri, 1)).toEqual([]);
    const trial = 'trials/2026/wren-daisy-pla-230.yaml';
    const text = registry.read(trial);
    registry.remove(trial);
    const changed = { changes: [{ uri: pathToFileURL(registry.path(trial)).href, type: 3 }] };
    const gone = await editor.nextDiagnostics(uri, () =>
      editor.notify('workspace/didChangeWatchedFiles', changed),
    );
    expect(codes(gone)).toContain('references/dangling');
    registry.write(trial, text);
    editor.replace(uri, registry.read(daisy), 2);
    expect(await editor.diagnostics(uri, 2)).toEqual([]);
    editor.close(uri);
  });

  it('of readings have what is wrong in them at their own lines', async () => {
    const sheet = 'trials/2026/wren-daisy-pla-230.csv';
    const text = registry.read(sheet);
    registry.write(sheet, text.replace('26,400,1.171', '26,400,x'));
    const trial = 'trials/2026/wren-daisy-pla-230.yaml';
    const { href } = pathToFileURL(registry.path(sheet));
    const found = await editor.nextDiagnostics(href, () => open(trial, registry.read(trial)));
    expect(found.length).toBeGreaterThan(0);
    expect(found[0]?.range.start.line).toBe(
      text.split('\n').findIndex((line) => line.startsWith('26,400,1.171')),
    );
    registry.write(sheet, text);
    const uri = pathToFileURL(registry.path(trial)).href;
    expect(await editor.nextDiagnostics(href, () => editor.close(uri))).toEqual([]);
  });
});

describe('several folders', () => {
  it('have a registry each', async () => {
    const other = sampleRegistry();
    other.remove('sources/oakhollow-daisy-pla-sheet.yaml');
    const added = [{ uri: pathToFileURL(other.cwd).href, name: 'other' }];
    editor.notify('workspace/didChangeWorkspaceFolders', { event: { added, removed: [] } });
    const own = open(daisy, registry.read(daisy));
    const others = editor.open(other.path(daisy), other.read(daisy));
    expect(await editor.diagnostics(own, 1)).toEqual([]);
    expect(codes(await editor.diagnostics(others, 1))).toContain('references/dangling');
    editor.close(own);
    editor.close(others);
  });
});

function write(path: string, text: string): void {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
}

describe('the conversation', { tags: 'long' }, () => {
  it('begins with what the program can do', async () => {
    const { cwd } = sampleRegistry();
    const own = new EditorClient(cwd);
    await expect(own.request('textDocument/hover', {})).rejects.toThrow('-32002');
    expect(await own.initialize(null)).toMatchObject({
      serverInfo: { name: 'meltbounds' },
      capabilities: { positionEncoding: 'utf-16', hoverProvider: true, textDocumentSync: { change: 2 } },
    });
    await expect(own.request('initialize', {})).rejects.toThrow('-32600');
    await expect(own.request('textDocument/nothing', {})).rejects.toThrow('-32601');
    for (const method of ['completion', 'hover', 'codeAction'])
      for (const params of [
        null,
        {},
        { textDocument: { uri: 1 } },
        { textDocument: { uri: 'x' }, position: { line: -1, character: 'a' } },
      ])
        await expect(own.request(`textDocument/${method}`, params)).rejects.toThrow('-32602');
    expect(await own.stop()).toBe(0);
    expect(own.err).toBe('');
  });

  it('asks to be told of changed files, if the editor can', async () => {
    const { cwd } = sampleRegistry();
    const own = new EditorClient(cwd);
    await own.initialize(cwd, { workspace: { didChangeWatchedFiles: { dynamicRegistration: true } } });
    const uri = own.open(join(cwd, 'profiles', daisy), 'kind: filament\n');
    expect((await own.diagnostics(uri, 1)).length).toBeGreaterThan(0);
    expect(own.asked).toEqual(['client/registerCapability']);
    expect(await own.stop()).toBe(0);
  });

  it('offers plain edits to an editor that knows no versions', async () => {
    const own = sampleRegistry();
    own.edit(wren, '430 mm/s', '430mm/s');
    const plain = new EditorClient(own.cwd);
    await plain.initialize(own.cwd);
    const uri = plain.open(own.path(wren), own.read(wren));
    const [action] = await plain.actions(uri, whole, { diagnostics: [], only: ['quickfix'] });
    expect(Object.keys(action?.edit.changes ?? {})).toEqual([uri]);
    expect(await plain.stop()).toBe(0);
  });

  it('goes on after messages that make no sense', async () => {
    const own = sampleRegistry();
    const odd = new EditorClient(own.cwd);
    await odd.initialize(own.cwd);
    for (const body of [
      '{',
      '[]',
      'null',
      '"text"',
      '{"jsonrpc":"2.0"}',
      '{"jsonrpc":"2.0","id":{},"method":5}',
      '{"jsonrpc":"2.0","id":999,"result":1}',
    ])
      odd.raw(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
    for (const params of [
      null,
      5,
      [],
      {},
      { textDocument: null },
      { textDocument: { uri: 'x' }, contentChanges: [{}, 1, { range: {}, text: 'x' }] },
    ])
      for (const method of ['didOpen', 'didChange', 'didClose', 'didSave'])
        odd.notify(`textDocument/${method}`, params);
    odd.notify('workspace/didChangeWatchedFiles', null);
    odd.notify('workspace/didChangeWorkspaceFolders', {
      event: { added: [1, { uri: 5 }, { uri: 'x' }], removed: 'x' },
    });
    odd.notify('$/cancelRequest', { id: 77 });
    odd.notify('$/unknown', {});
    const uri = odd.open(own.path(daisy), own.read(daisy));
    expect(await odd.diagnostics(uri, 1)).toEqual([]);
    expect(await odd.stop()).toBe(0);
  });

  it('can take a question back', async () => {
    const { cwd } = sampleRegistry();
    const own = new EditorClient(cwd);
    await own.initialize(cwd);
    const uri = own.open(join(cwd, 'profiles', daisy), 'kind: filament\nsheet: \n');
    const position = { line: 1, character: 7 };
    const asked = Array.from({ length: 20 }, () =>
      own.begin('textDocument/completion', { textDocument: { uri }, position }),
    );
    const outcomes = asked.map(({ answer }) =>
      answer.then(
        () => 'answered',
        (error: Error) => error.message,
      ),
    );
    for (const { id } of asked) own.notify('$/cancelRequest', { id });
    for (const outcome of await Promise.all(outcomes)) expect(outcome).toMatch(/^answered$|^-32800/);
    expect(await own.complete(uri, position)).not.toBeNull();
    expect(await own.stop()).toBe(0);
  });

  it('ends with 1 where the editor goes without ending it', async () => {
    const { cwd } = sampleRegistry();
    const own = new EditorClient(cwd);
    await own.initialize(cwd);
    own.open(join(cwd, 'profiles', daisy), 'kind: filament\n');
    expect(await own.vanish()).toBe(1);
    const other = new EditorClient(cwd);
    other.notify('exit', null);
    expect(await other.ended).toBe(1);
  });

  it('answers nothing more once it is shut down', async () => {
    const { cwd } = sampleRegistry();
    const own = new EditorClient(cwd);
    await own.initialize(cwd);
    await own.request('shutdown', null);
    await expect(own.request('textDocument/hover', {})).rejects.toThrow('-32600');
    await expect(own.request('shutdown', null)).rejects.toThrow('-32600');
    own.notify('exit', null);
    expect(await own.ended).toBe(0);
  });

  it('takes registries from the command line', async () => {
    const base = sampleRegistry();
    const team = temporaryFolder();
    write(join(team, 'profiles/jobs/rail.yaml'), 'kind: job\n');
    const own = new EditorClient(team, '--registry', join(base.cwd, 'profiles'), '--registry', 'profiles');
    await own.initialize(team);
    const text = 'kind: addition\nid: x\nfilament: \n';
    const uri = own.open(join(team, 'profiles/additions/x.yaml'), text);
    expect((await own.complete(uri, { line: 2, character: 10 }))?.map(({ label }) => label)).toContain(
      'oakhollow/daisy-pla',
    );
    expect(await own.stop()).toBe(0);
  });
});
