import { describe, expect, it } from 'vitest';
import { runCommand } from '../run-command.ts';
import { temporaryFolder } from '../sample-registry.ts';

describe('help', () => {
  it.each(['check', 'reduce', 'tables', 'new', 'plan', 'match', 'claims', 'init'])(
    'of %s shows examples and what the exit status means',
    async (command) => {
      const { status, out } = await runCommand(temporaryFolder(), [command, '--help']);
      expect(status).toBe(0);
      expect(out).toMatch(new RegExp(`Examples:\n  meltbounds ${command}\\b`));
      expect(out).toMatch(/Exit status: 0 .*2 /);
    },
  );

  it('lists the commands', async () => {
    const { status, out } = await runCommand(temporaryFolder(), ['--help']);
    expect(status).toBe(0);
    for (const command of ['check', 'reduce', 'tables', 'new', 'plan', 'match', 'init'])
      expect(out).toMatch(new RegExp(`^  ${command} `, 'm'));
  });

  it('is shown where no command is named, with exit status 2', async () => {
    const { status, err } = await runCommand(temporaryFolder(), []);
    expect(status).toBe(2);
    expect(err).toContain('Usage: meltbounds');
  });
});
