/** @module-tag long */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it, test } from 'vitest';
import { kinds } from '../../src/registry/kind.ts';
import { unitsOf } from '../../src/units/unit-table.ts';
import { LanguageServer } from './language-server.ts';

// What an editor shows that knows nothing of this project but the first line of a profile. The server is the one that
// most editors use for YAML, from its package on npm; the schemas are found by their relative path, with no network.

const project = fileURLToPath(new URL('../../', import.meta.url));
const folder = join(project, 'tests/editors');
const head = (kind: string) => `# yaml-language-server: $schema=../../schema/${kind}.schema.json\n`;

let server: LanguageServer;
let files = 0;

beforeAll(async () => {
  server = await LanguageServer.start(project);
});

afterAll(() => server.stop());

/** Opens a profile with a cursor, written as `|`, behind the line that names the schema. */
function opened(kind: string, marked: string) {
  const [before = '', after = ''] = (head(kind) + marked).split('|');
  const lines = before.split('\n');
  const path = join(folder, `unsaved-${files++}.yaml`);
  server.open(path, before + after);
  return { path, cursor: { line: lines.length - 1, character: (lines.at(-1) ?? '').length } };
}

async function offered(kind: string, marked: string): Promise<string[]> {
  const { path, cursor } = opened(kind, marked);
  return (await server.completion(path, cursor)).map(({ label }) => label);
}

async function hovered(kind: string, marked: string): Promise<string> {
  const { path, cursor } = opened(kind, marked);
  return server.hover(path, cursor);
}

async function complaints(kind: string, text: string) {
  const found = await server.diagnostics(opened(kind, text).path);
  return found.filter(({ message }) => !message.startsWith('Missing property'));
}

describe('completion offers', () => {
  it.each(kinds)('the keys of a %s', async (kind) => {
    expect(await offered(kind, `kind: ${kind}\n|`)).toEqual(expect.arrayContaining(['id', 'notice']));
  });

  it('the keys of a statement', async () => {
    expect(await offered('filament', 'density:\n  - |')).toEqual(
      expect.arrayContaining(['value', 'interval', 'basis', 'source', 'at']),
    );
  });

  it('the choices of a closed list', async () => {
    expect(await offered('filament', 'density:\n  - value: 1.2 g/cm3\n    basis: |\n')).toEqual([
      ...['measured', 'published', 'derived', 'claimed', 'assumed'],
    ]);
  });

  it('a value with each unit that would do, the number ready to be typed over', async () => {
    const { path, cursor } = opened('filament', 'diameter: |');
    const items = await server.completion(path, cursor);
    expect(items.map(({ label }) => label)).toEqual(expect.arrayContaining(['1.75 mm', '… mm', '… [in_i]']));
    expect(items.find(({ label }) => label === '… um')?.insertText).toBe(`\${1:0.45} um`);
  });

  it('ranges where a range is wanted', async () => {
    const { path, cursor } = opened('filament', 'bedTemperature:\n  - value: |\n');
    const items = await server.completion(path, cursor);
    expect(items.find(({ label }) => label === '… Cel')?.insertText).toBe(`\${1:190..235} Cel`);
  });

  it('units of a column of readings', async () => {
    expect(await offered('trial', 'observations:\n  columns:\n    extrudedMass: |\n')).toEqual(
      expect.arrayContaining(['g', 'mg']),
    );
  });
});

describe('hovering tells', () => {
  it('what a key means, with an example', async () => {
    const text = await hovered('filament', 'diam|eter: 1.75 mm\n');
    expect(text).toContain('Nominal diameter of the filament.');
    expect(text).toContain('1.75 mm');
  });

  it('what a key of a statement means', async () => {
    expect(await hovered('filament', 'density:\n  - value: 1.2 g/cm3\n    ba|sis: claimed\n')).toContain(
      'published and claimed a source',
    );
  });

  it('nothing of what only the program reads', async () => {
    const text = await hovered('machine', 'topSp|eed:\n  - value: 300 mm/s\n');
    expect(text).toContain('Highest speed of the print head along a line.');
    expect(text).not.toMatch(/meltbounds"|plausible|safe/);
  });

  it('what a key means whose schema several keys share', async () => {
    expect(await hovered('job', 'features:\n  infill:\n    mean|Segment: 35 mm\n')).toContain(
      'Mean length between two stops or sharp corners.',
    );
  });
});

describe('the editor underlines', () => {
  it('a wrong unit, and names those that would do', async () => {
    const [complaint, ...more] = await complaints('filament', 'kind: filament\ndiameter: 1.75 kg\n');
    expect(more).toEqual([]);
    expect(complaint?.range).toEqual({ start: { line: 2, character: 10 }, end: { line: 2, character: 17 } });
    const units = unitsOf('length').map(({ code }) => code);
    expect(units).toContain('[in_i]');
    expect(complaint?.message).toBe(
      `A length is written as a number, a space and a unit: ${units.join(', ')}. For instance: 0.45 mm`,
    );
  });

  it('a number without a unit', async () => {
    const [complaint] = await complaints(
      'filament',
      'kind: filament\ndensity:\n  - value: 1.24\n    basis: assumed\n',
    );
    expect(complaint?.message).toContain('"string"');
  });

  it('a misspelled key', async () => {
    const [complaint] = await complaints('filament', 'kind: filament\ndimeter: 1.75 mm\n');
    expect(complaint?.message).toContain('dimeter');
  });
});

test('a profile of the demo registry has nothing underlined', async () => {
  const path = join(project, 'profiles/filaments/ashgrove/stagecraft-pla.yaml');
  server.open(path, readFileSync(path, 'utf8'));
  expect(await server.diagnostics(path)).toEqual([]);
});
