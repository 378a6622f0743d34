import { describe, expect, it } from 'vitest';
import { terminalProgress } from '../../src/host/progress.ts';
import { runCommand, spawnCommand } from '../run-command.ts';
import { sampleRegistry } from '../sample-registry.ts';

describe('progress', () => {
  it('takes its own place on one line, without colours', () => {
    const written: string[] = [];
    const progress = terminalProgress((text) => written.push(text), true, {});
    progress?.('Reading');
    progress?.('');
    expect(written).toEqual(['\r\u001B[KReading', '\r\u001B[K']);
  });

  it.each([
    [false, {}],
    [true, { TERM: 'dumb' }],
    [true, { CI: 'true' }],
  ])('is silent where isTerminal is %s with %j', (isTerminal, env) => {
    expect(terminalProgress(() => undefined, isTerminal, env)).toBeNull();
  });

  it('says what check is doing, and leaves nothing behind', async () => {
    const said: string[] = [];
    const { status } = await runCommand(sampleRegistry().cwd, ['check'], {
      progress: (text) => said.push(text),
    });
    expect(status).toBe(0);
    expect(said).toEqual(['Reading profiles …', expect.stringMatching(/^Checking \d+ profiles …$/), '']);
  });

  it('is not in the output of a program that writes to a pipe', () => {
    expect(spawnCommand(sampleRegistry().cwd, ['check']).err).toBe('');
  });
});
