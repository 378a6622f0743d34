import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { runCommand, spawnCommand } from '../../run-command.ts';
import { sampleRegistry } from '../../sample-registry.ts';

const goldens = fileURLToPath(new URL('../../goldens', import.meta.url));
const all = readdirSync(goldens).filter((name) => name.startsWith('plumstead-wren--'));
const templates = ['sheet.ini', 'sheet.xml', 'wall.txt'];
const names = all.filter((name) => !templates.some((template) => name.endsWith(`--${template}`)));
const args = ['tables', 'plumstead/wren', 'oakhollow/daisy-pla', '--out', 'made'];

function templateArgs(name: string): string[] {
  return [
    ...args,
    '--template',
    fileURLToPath(new URL(`../../../examples/templates/${name}`, import.meta.url)),
  ];
}

function madeIn(cwd: string): Record<string, string> {
  const texts = readdirSync(join(cwd, 'made')).filter((name) => !name.endsWith('.xlsx'));
  return Object.fromEntries(
    // What is in the workbook is compared with the CSV files, and its bytes with themselves, in workbook.test.ts.
    texts.map((name) => [name, readFileSync(join(cwd, 'made', name), 'utf8')]),
  );
}

describe('the golden tables', () => {
  it('are seven texts: two CSV files with their metadata, JSON, Markdown and HTML', () => {
    const pairing = 'plumstead-wren--hs-0.6--oakhollow-daisy-pla--house';
    expect(names.sort()).toEqual(
      [
        '--conditions.csv',
        '--conditions.csv-metadata.json',
        '.csv',
        '.csv-metadata.json',
        '.html',
        '.json',
        '.md',
      ].map((ending) => `${pairing}${ending}`),
    );
  });

  it.each(names)('%s is written again byte for byte', async (name) => {
    const { cwd } = sampleRegistry();
    await runCommand(cwd, args);
    await expect(madeIn(cwd)[name]).toMatchFileSnapshot(join(goldens, name));
  });

  it.each([
    { TZ: 'Pacific/Kiritimati', LANG: 'C' },
    { TZ: 'America/St_Johns', LANG: 'tr_TR.UTF-8', LC_ALL: 'tr_TR.UTF-8' },
    { TZ: 'UTC', LANG: 'de_DE.UTF-8', LC_ALL: 'de_DE.UTF-8' },
  ])('are the same with $TZ and $LANG', { tags: 'long' }, (env) => {
    const { cwd } = sampleRegistry();
    expect(spawnCommand(cwd, args, env).status).toBe(0);
    const wanted = Object.fromEntries(names.map((name) => [name, readFileSync(join(goldens, name), 'utf8')]));
    expect(madeIn(cwd)).toEqual(wanted);
  });
});

describe('the golden sheets of the example templates', () => {
  it.each(templates)('%s is written again byte for byte, in any place and language', async (template) => {
    const golden = `plumstead-wren--hs-0.6--oakhollow-daisy-pla--house--${template}`;
    const { cwd } = sampleRegistry();
    await runCommand(cwd, templateArgs(template));
    const made = madeIn(cwd);
    expect(Object.keys(made)).toEqual([golden]);
    await expect(made[golden]).toMatchFileSnapshot(join(goldens, golden));
    const env = { TZ: 'Asia/Kathmandu', LANG: 'ar_EG.UTF-8', LC_ALL: 'ar_EG.UTF-8' };
    expect(spawnCommand(cwd, templateArgs(template), env).status).toBe(0);
    expect(madeIn(cwd)).toEqual(made);
  });
});
