import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCommand, spawnCommand } from '../run-command.ts';
import { type SampleRegistry, sampleRegistry } from '../sample-registry.ts';

const explain = ['tables', 'plumstead/wren', 'oakhollow/daisy-pla', '--explain', 'infill@0.3x0.66'];
const pairings = ['plumstead/wren:hs-0.6+oakhollow/daisy-pla', 'plumstead/wren:hs-0.6+oakhollow/daisy-pla'];

/** The sample registry, with an earlier version of it in the folder `base`. */
function withEarlierVersion(): SampleRegistry {
  const registry = sampleRegistry();
  cpSync(join(registry.cwd, 'profiles'), join(registry.cwd, 'base'), { recursive: true });
  registry.edit('filaments/oakhollow/daisy-pla.yaml', 'value: 26 mm3/s', 'value: 24 mm3/s');
  return registry;
}

it('the arithmetic of a row is written again byte for byte', async () => {
  const { out, status } = await runCommand(sampleRegistry().cwd, explain);
  expect(status).toBe(0);
  await expect(out).toMatchFileSnapshot('../goldens/wren-infill-explained.txt');
});

// A language with other capitals, a comma for the point, other digits, and days that begin elsewhere.
const places = [
  { TZ: 'Pacific/Kiritimati', LANG: 'tr_TR.UTF-8', LC_ALL: 'tr_TR.UTF-8' },
  { TZ: 'America/St_Johns', LANG: 'ar_EG.UTF-8', LC_ALL: 'ar_EG.UTF-8' },
];

describe('in another time zone and language it is the same:', { tags: 'long' }, () => {
  it.each([
    explain,
    ['compare', 'hook', ...pairings, '--jobs', '300', '--format', 'markdown'],
    ['match'],
    ['match', 'oakhollow/daisy-pla', '--format', 'markdown'],
    ['claims', 'plumstead/wren', '--format', 'markdown'],
    ['diff', 'base', 'profiles', '--format', 'markdown'],
  ])('%s %s %s %s', async (...args) => {
    const words = args.filter((word) => word !== undefined);
    const { cwd } = withEarlierVersion();
    const { out, status } = await runCommand(cwd, words);
    expect(out).not.toBe('');
    for (const env of places) {
      const there = spawnCommand(cwd, words, env);
      expect({ out: there.out, status: there.status }).toEqual({ out, status });
    }
  });
});
