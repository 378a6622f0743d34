import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Ajv } from 'ajv';
import { parse } from 'csv-parse/sync';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import { run } from '../../src/commands/run.ts';
import type { TableIndex } from '../../src/tables/write/table-index.ts';
import { formatTableIndexAsCsv } from '../../src/tables/write/table-index-as-csv.ts';
import { formatTableIndexAsHtml } from '../../src/tables/write/table-index-as-html.ts';
import { htmlComplaints } from '../html-complaints.ts';
import { runCommand, spawnCommand } from '../run-command.ts';
import { type SampleRegistry, sampleRegistry } from '../sample-registry.ts';

const goldens = fileURLToPath(new URL('../goldens/all', import.meta.url));
const folder = 'house/plumstead/wren/hs-0.6/oakhollow/daisy-pla';

function all(cwd: string, ...args: string[]) {
  return runCommand(cwd, ['tables', '--all', '--out', 'made', ...args]);
}

/** Every file below a folder with its text. */
function filesIn(root: string): Record<string, string> {
  const paths = readdirSync(root, { recursive: true, encoding: 'utf8', withFileTypes: true });
  return Object.fromEntries(
    paths
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name))
      .map((path) => [path.slice(root.length + 1), readFileSync(path, 'utf8')]),
  );
}

function addPolicy(registry: SampleRegistry): void {
  const rush = registry.read('policies/house.yaml').replace('id: house', 'id: rush');
  registry.write('policies/rush.yaml', rush);
}

describe('tables --all', () => {
  it('leaves no old index to tables of which some are new, where it is cut off', async () => {
    const registry = sampleRegistry();
    addPolicy(registry);
    const { cwd } = registry;
    const index = (ending: string) => readFileSync(join(cwd, 'made', `index.${ending}`), 'utf8');
    // An earlier run has left its index, and the tables of the second policy cannot go where a file stands.
    mkdirSync(join(cwd, 'made'));
    for (const name of ['index.html', 'index.json', 'rush']) writeFileSync(join(cwd, 'made', name), 'old');
    expect((await all(cwd)).status).toBe(2);
    expect(JSON.parse(index('json')).format).toBe('meltbounds-tables-unfinished/1');
    expect(index('html')).toContain('not finished');
    expect(await htmlComplaints(index('html'))).toEqual([]);
    expect(index('csv')).toContain('not finished');
  });

  it('writes the files of every pairing that has a limit, and the index', async () => {
    const { cwd } = sampleRegistry();
    const { status, err } = await all(cwd);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    const files = Object.keys(filesIn(join(cwd, 'made')));
    expect(files.filter((file) => !file.includes('/')).sort()).toEqual([
      'index.csv',
      'index.html',
      'index.json',
    ]);
    expect(
      new Set(files.filter((file) => file.includes('/')).map((file) => file.replace(/\/[^/]*$/, ''))),
    ).toEqual(new Set([folder]));
  });

  it('writes what the command for one pairing writes', async () => {
    const { cwd } = sampleRegistry();
    await all(cwd);
    await runCommand(cwd, [
      'tables',
      'plumstead/wren',
      'oakhollow/daisy-pla',
      '--nozzle',
      'hs-0.6',
      '--out',
      'one',
    ]);
    expect(filesIn(join(cwd, 'made', folder))).toEqual(filesIn(join(cwd, 'one')));
  });

  it('says how many tables each policy has, in columns that line up', async () => {
    const registry = sampleRegistry();
    addPolicy(registry);
    const { out } = await all(registry.cwd);
    const count = Object.keys(filesIn(join(registry.cwd, 'made'))).filter((file) =>
      file.includes('/'),
    ).length;
    expect(count).toBeGreaterThan(12);
    expect(out).toBe(
      [
        'policy  tables  left out',
        'house        1         3',
        'rush         1         3',
        '',
        `${count} files under made, listed in made/index.html (also index.json, index.csv), with the reason of every pairing left out.`,
        '',
      ].join('\n'),
    );
  });

  it('makes the tables of one policy with --policy', async () => {
    const registry = sampleRegistry();
    addPolicy(registry);
    await all(registry.cwd, '--policy', 'rush');
    expect(readdirSync(join(registry.cwd, 'made')).sort()).toEqual([
      'index.csv',
      'index.html',
      'index.json',
      'rush',
    ]);
  });

  it('fills a template for every pairing', async () => {
    const { cwd } = sampleRegistry();
    writeFileSync(join(cwd, 'card.txt'), '{{filament}}\n');
    await all(cwd, '--template', 'card.txt');
    const name = 'plumstead-wren--hs-0.6--oakhollow-daisy-pla--house--card.txt';
    expect(filesIn(join(cwd, 'made', folder))).toEqual({ [name]: 'oakhollow/daisy-pla\n' });
  });

  it('reads the registry once', async () => {
    const path = '../../src/host/load-registry.ts';
    const { filesOfFolders, ...loading } = await import('../../src/host/load-registry.ts');
    const counted = vi.fn(filesOfFolders);
    vi.resetModules();
    vi.doMock(path, () => ({ ...loading, filesOfFolders: counted }));
    onTestFinished(() => {
      vi.doUnmock(path);
      vi.resetModules();
    });
    const { runCommand: runCounted } = await import('../run-command.ts');
    const { status } = await runCounted(sampleRegistry().cwd, ['tables', '--all', '--out', 'made']);
    expect(status).toBe(0);
    expect(counted).toHaveBeenCalledTimes(1);
  });

  it('shows its progress where somebody watches, and leaves nothing of it', async () => {
    const shown: string[] = [];
    const { cwd } = sampleRegistry();
    await run(['tables', '--all', '--out', 'made'], '0.0.0', {
      ...{ cwd, out: () => {}, outBytes: () => {}, err: () => {}, colour: false, today: () => '2026-06-01' },
      progress: (text) => shown.push(text),
    });
    expect(shown.slice(0, -1).length).toBeGreaterThan(0);
    for (const text of shown.slice(0, -1)) expect(text).toMatch(/^Tables: \d of 4 pairings …$/);
    expect(shown.at(-1)).toBe('');
  });
});

describe('its index', () => {
  it('names files that exist, and a reason for every other pairing', async () => {
    const { cwd } = sampleRegistry();
    await all(cwd);
    const index = JSON.parse(readFileSync(join(cwd, 'made/index.json'), 'utf8'));
    expect(index.format).toBe('meltbounds-tables-index/1');
    for (const { folder: place, files } of index.tabled) {
      for (const file of files) expect(existsSync(join(cwd, 'made', place, file))).toBe(true);
    }
    expect(index.omitted).toHaveLength(3);
    for (const { reason } of index.omitted) expect(reason).toMatch(/^No melt flow is known for /);
    const rows = parse(readFileSync(join(cwd, 'made/index.csv'))) as string[][];
    expect(rows.slice(1).map((row) => row[4])).toEqual(['tabled', 'omitted', 'omitted', 'omitted']);
  });

  it('fits its published schema as JSON', async () => {
    const { cwd } = sampleRegistry();
    await all(cwd);
    const path = new URL('../../schema/output/tables-index.schema.json', import.meta.url);
    const validate = new Ajv({ strict: true }).compile(JSON.parse(readFileSync(path, 'utf8')));
    validate(JSON.parse(readFileSync(join(cwd, 'made/index.json'), 'utf8')));
    expect(validate.errors).toBeNull();
    expect(validate({})).toBe(false);
  });

  it('shows the texts of strangers as texts', () => {
    const index = (text: string): TableIndex => ({
      tabled: [
        {
          ...{ policy: text, machine: text, nozzle: text, filament: text, folder: 'a', files: ['t--a.csv'] },
          ...{ largestFlow: 1, weakestBasis: 'claimed', flags: [], warnings: 0 },
        },
      ],
      omitted: [{ policy: text, machine: text, nozzle: text, filament: text, reason: text }],
    });
    const tags = (html: string) => [...html.matchAll(/<\/?[a-zA-Z][^\s>]*/g)].map(([tag]) => tag);
    for (const text of ['<script>alert(1)</script>', '"onload="alert(1)', ']]>', '</style>']) {
      expect(tags(formatTableIndexAsHtml(index(text)))).toEqual(
        tags(formatTableIndexAsHtml(index('harmless'))),
      );
    }
    expect(formatTableIndexAsCsv(index('=1+1'))).toContain("'=1+1,'=1+1,'=1+1,'=1+1,tabled");
  });

  it('is valid and accessible HTML whose links lead to files', async () => {
    const { cwd } = sampleRegistry();
    await all(cwd);
    const html = readFileSync(join(cwd, 'made/index.html'), 'utf8');
    expect(await htmlComplaints(html)).toEqual([]);
    const links = [...html.matchAll(/href="([^"]*)"/g)].map(([, link = '']) => link);
    const opened = readdirSync(join(cwd, 'made', folder)).filter((file) => !file.endsWith('-metadata.json'));
    expect(links.map(decodeURIComponent).sort()).toEqual(opened.map((file) => `${folder}/${file}`).sort());
  });

  it.each(['index.html', 'index.json', 'index.csv'])('%s is written again byte for byte', async (name) => {
    const { cwd } = sampleRegistry();
    await all(cwd);
    await expect(readFileSync(join(cwd, 'made', name), 'utf8')).toMatchFileSnapshot(join(goldens, name));
  });

  it('is the same, with every file, in any place and language', { tags: 'long' }, async () => {
    const { cwd } = sampleRegistry();
    await all(cwd);
    const args = ['tables', '--all', '--out', 'again'];
    const env = { TZ: 'Pacific/Apia', LANG: 'tr_TR.UTF-8', LC_ALL: 'tr_TR.UTF-8' };
    expect(spawnCommand(cwd, args, env).status).toBe(0);
    expect(filesIn(join(cwd, 'again'))).toEqual(filesIn(join(cwd, 'made')));
  });
});

describe('it ends with status 2 and writes nothing', () => {
  it.each([
    [
      'without a folder',
      ['--all'],
      '--all writes many files.\nName a folder for them, such as --out tables.\n',
    ],
    [
      'with a machine',
      ['--all', 'plumstead/wren', '--out', 'made'],
      '--all makes the tables of every pairing.\nName no machine.\n',
    ],
    [
      'with an unknown policy',
      ['--all', '--out', 'made', '--policy', 'hause'],
      'There is no policy "hause".\nDid you mean "house"?\n',
    ],
  ])('%s', async (_, args, message) => {
    const { cwd } = sampleRegistry();
    const outcome = await runCommand(cwd, ['tables', ...args]);
    expect(outcome).toEqual({ status: 2, out: '', err: message });
    expect(existsSync(join(cwd, 'made'))).toBe(false);
  });

  it('with no pairing that has a limit', async () => {
    const registry = sampleRegistry();
    registry.edit('machines/plumstead/wren.yaml', 'filamentDiameter: 1.75 mm', 'filamentDiameter: 2.85 mm');
    const { status, err } = await all(registry.cwd);
    expect(status).toBe(2);
    expect(err).toMatch(/^No pairing of the registry has a table\.\nThe first, .* is a 1\.75 mm filament/);
    expect(existsSync(join(registry.cwd, 'made'))).toBe(false);
  });

  it('where the folder cannot be written', async () => {
    const { cwd } = sampleRegistry();
    writeFileSync(join(cwd, 'made'), 'a file');
    const { status, err } = await all(cwd);
    expect(status).toBe(2);
    expect(err).toMatch(/^--out made: the files cannot be written \(E[A-Z]+\)\.\nName a folder/);
  });
});
