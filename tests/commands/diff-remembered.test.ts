import { join } from 'node:path';
import { expect, it, vi } from 'vitest';
import { committedRegistry } from '../git-repository.ts';
import { runCommand, unwrapped } from '../run-command.ts';
import { sampleRegistry } from '../sample-registry.ts';

it('diff does not read results that either side brings', async () => {
  const { cwd } = committedRegistry();
  const other = join(sampleRegistry().cwd, 'profiles');
  const get = vi.fn(() => null);
  const results = async () => ({
    folder: join(other, 'cache'),
    store: { get, put: () => undefined },
    program: 'tests',
  });
  for (const words of [
    [other, 'profiles'],
    ['profiles', other],
  ]) {
    const { status, err } = await runCommand(cwd, ['diff', ...words], { results });
    expect(status).toBe(2);
    expect(unwrapped(err)).toContain('lies inside of the registry');
  }
  expect(get).not.toHaveBeenCalled();
});
