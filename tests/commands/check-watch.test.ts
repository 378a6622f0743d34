import { expect, it } from 'vitest';
import { runCommand } from '../run-command.ts';
import { sampleRegistry } from '../sample-registry.ts';

const wren = 'machines/plumstead/wren.yaml';

it('checks again after each change, and says the same as a check of its own', async () => {
  const registry = sampleRegistry();
  const sound = registry.read(wren);
  const alone: string[] = [];
  async function* changes() {
    for (const text of [sound.replace('maker:', 'makr:'), sound, `${sound}# a note\n`]) {
      registry.write(wren, text);
      alone.push((await runCommand(registry.cwd, ['check'])).out);
      yield;
    }
  }
  const first = await runCommand(registry.cwd, ['check']);
  const { out, err, status } = await runCommand(registry.cwd, ['check', '--watch'], { changes });
  expect(out).toBe([first.out, ...alone].join('\n'));
  expect(alone[0]).toContain('shape/unknown-key');
  expect(err).toBe('Waiting for changes; Ctrl+C ends it.\n');
  expect(status).toBe(0);
});

it('sees the readings in a sheet change', async () => {
  const registry = sampleRegistry();
  const sheet = 'trials/2026/wren-daisy-pla-230.csv';
  async function* changes() {
    registry.write(sheet, registry.read(sheet).replace('mm3/s', 'mm/s'));
    yield;
  }
  const { out } = await runCommand(registry.cwd, ['check', '--watch'], { changes });
  const [before, ...after] = out.split('\n\n');
  expect(before).toContain('no problems found');
  expect(after.join('')).toContain(sheet);
});

it.each([['--fix'], ['--changed', 'main'], ['--shard', '1/2']])('does not go with %s', async (...args) => {
  const { cwd } = sampleRegistry();
  const { status, err } = await runCommand(cwd, ['check', '--watch', ...args]);
  expect(status).toBe(2);
  expect(err).toContain('cannot be used with');
});

it('says where changes cannot be seen', async () => {
  const { cwd } = sampleRegistry();
  const { status, err } = await runCommand(cwd, ['check', '--watch']);
  expect(status).toBe(2);
  expect(err).toMatch(/cannot see when files change.*run the command again after each change/s);
});

it('says so when the system lets no more be watched', async () => {
  const { cwd } = sampleRegistry();
  const changes = () => {
    throw Object.assign(new Error('no space'), { code: 'ENOSPC' });
  };
  const { status, err } = await runCommand(cwd, ['check', '--watch'], { changes });
  expect(status).toBe(2);
  expect(err).toContain('--watch cannot see any longer when files change (ENOSPC)');
});
