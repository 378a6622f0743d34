import { readFileSync } from 'node:fs';
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
    // Its page, its data, and the digest in the list of jobs.
    expect(second.out).toMatch(/: 3 written, \d+ as they were, 0 removed\./);
    expect(readFileSync(join(registry.cwd, 'public/jobs/hook.html'), 'utf8')).toContain('1.0.1');
  });

  it('needs a folder', async () => {
    expect(await runCommand(sampleRegistry().cwd, ['site'])).toMatchObject({
      status: 2,
      err: expect.stringContaining("required option '--out <folder>'"),
    });
  });
});
