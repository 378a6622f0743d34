import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCommand } from '../run-command.ts';
import { sampleRegistry } from '../sample-registry.ts';

describe('site', () => {
  it('writes the catalogue, and the next time what has changed alone', async () => {
    const registry = sampleRegistry();
    const write = () => runCommand(registry.cwd, ['site', '--out', 'public']);
    const first = await write();
    expect(first).toMatchObject({ status: 0, err: '' });
    expect(first.out).toMatch(
      /^(\d+) files under public: \1 written, 0 as they were, 0 removed\. Open public.index\.html\.\n$/,
    );

    registry.edit('jobs/hook.yaml', 'version: 1.0.0', 'version: 1.0.1');
    const second = await write();
    // Its page, its data, the jobs of the comparison, and the digest in the list of jobs; what every bench has of the registry, and the list of what it keeps.
    expect(second.out).toMatch(/: 6 written, \d+ as they were, 0 removed\./);
    expect(readFileSync(join(registry.cwd, 'public/jobs/hook.html'), 'utf8')).toContain('1.0.1');
  });

  it('hands the bench page what is the team’s own, and the web editor that package.json names', async () => {
    const registry = sampleRegistry();
    const webEditor = {
      newFile: 'https://code.example/new/main?filename={path}&value={text}',
      editFile: 'https://code.example/edit/main/{path}',
    };
    writeFileSync(join(registry.cwd, 'package.json'), JSON.stringify({ meltbounds: { webEditor } }));
    expect(await runCommand(registry.cwd, ['site', '--out', 'public'])).toMatchObject({ status: 0, err: '' });
    const data = readFileSync(join(registry.cwd, 'public/bench-data.js'), 'utf8');
    expect(data).toContain(
      `"setting":${JSON.stringify({ folder: 'profiles', schemas: '../node_modules/meltbounds/schema', webEditor })}`,
    );
    const part = JSON.parse(
      readFileSync(join(registry.cwd, 'public/bench/machines/plumstead/wren.json'), 'utf8'),
    );
    expect(part.files).toContainEqual({
      path: 'machines/plumstead/wren.yaml',
      text: registry.read('machines/plumstead/wren.yaml'),
      isOwn: true,
    });
  });

  it.each([
    [
      { newFile: 'http://code.example/{path}', editFile: 'https://code.example/{path}' },
      'newFile does not begin with https://',
    ],
    [{ newFile: 'https://code.example/{path}' }, 'has no text under editFile'],
    [
      { newFile: 'https://a.example/{path}', editFile: 'https://a.example/{path}', tabs: 2 },
      'has a key "tabs"',
    ],
    ['https://code.example/{path}', 'has no text under newFile'],
  ])('refuses the web editor %j', async (webEditor, message) => {
    const registry = sampleRegistry();
    writeFileSync(join(registry.cwd, 'package.json'), JSON.stringify({ meltbounds: { webEditor } }));
    const { status, err } = await runCommand(registry.cwd, ['site', '--out', 'public']);
    expect({ status, err }).toMatchObject({ status: 2, err: expect.stringContaining(message) });
    expect(existsSync(join(registry.cwd, 'public'))).toBe(false);
  });

  it('has pages under the house rules that are asked for alone, and refuses those that there are not', async () => {
    const registry = sampleRegistry();
    const other = registry.read('policies/house.yaml').replace('id: house', 'id: other');
    registry.write('policies/other.yaml', other);
    const one = await runCommand(registry.cwd, ['site', '--out', 'public', '--policy', 'other']);
    expect(one).toMatchObject({ status: 0, err: '' });
    const folders = readdirSync(join(registry.cwd, 'public/pairings'));
    expect(folders.sort()).toEqual(['other', 'other--find.js']);
    const both = await runCommand(registry.cwd, ['site', '--out', 'public']);
    expect(both).toMatchObject({ status: 0, err: '' });
    expect(readdirSync(join(registry.cwd, 'public/pairings'))).toContain('house');
    expect(await runCommand(registry.cwd, ['site', '--out', 'none', '--policy', 'hous'])).toMatchObject({
      status: 2,
      err: expect.stringMatching(/hous.*house/s),
    });
    expect(existsSync(join(registry.cwd, 'none'))).toBe(false);
  });

  it('needs a folder', async () => {
    expect(await runCommand(sampleRegistry().cwd, ['site'])).toMatchObject({
      status: 2,
      err: expect.stringContaining("required option '--out <folder>'"),
    });
  });
});
