import { mkdtempSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { randomSource } from '../../src/statistics/random.ts';
import { runCommand } from '../run-command.ts';
import { type KillOutcome, killsOf } from './kill-browser.ts';
import { serveFolder } from './serve-folder.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

describe('a browser that is killed under the bench page', { tags: 'browser' }, () => {
  it('has every row that is older than a second when it is opened again', async () => {
    const folder = realpathSync(mkdtempSync(join(tmpdir(), 'meltbounds-kill-')));
    const { status, err } = await runCommand(root, ['site', '--out', join(folder, 'site')]);
    if (status !== 0) throw new Error(`site ended with ${status}: ${err}`);
    const served = await serveFolder(join(folder, 'site'));
    const outcomes: KillOutcome[] = [];
    try {
      const { uniform } = randomSource('kills');
      for await (const outcome of killsOf(served.address, join(folder, 'profile'), uniform)) {
        if (outcomes.push(outcome) === 6) break;
      }
    } finally {
      await served.close();
      rmSync(folder, { recursive: true, force: true });
    }
    const sum = (key: keyof KillOutcome) => outcomes.reduce((total, outcome) => total + outcome[key], 0);
    expect(sum('old')).toBeGreaterThan(5);
    expect(sum('lost')).toBe(0);
  });
});
