import { describe, expect, it } from 'vitest';
import { runCommand } from '../run-command.ts';
import { temporaryFolder } from '../sample-registry.ts';

/** Names of all commands, read off the help of the program. */
async function commandNames(): Promise<string[]> {
  const { out } = await runCommand(temporaryFolder(), ['--help']);
  const listed = out.slice(out.indexOf('Commands:'), out.indexOf('Examples:'));
  return [...listed.matchAll(/^ {2}([a-z]+) /gm)]
    .map(([, name = '']) => name)
    .filter((name) => name !== 'help');
}

describe('help', () => {
  it('lists the commands', async () => {
    expect(await commandNames()).toEqual(
      expect.arrayContaining(['check', 'reduce', 'tables', 'diff', 'index', 'rules', 'completion']),
    );
  });

  it('of every command shows examples of it and what the exit status means', async () => {
    for (const command of await commandNames()) {
      const { status, out } = await runCommand(temporaryFolder(), [command, '--help']);
      expect(status).toBe(0);
      expect(out).toMatch(new RegExp(`Examples?:\n  meltbounds ${command}\\b`));
      expect(out, command).toMatch(/Exit status: 0 .*2 /s);
    }
  });

  it('of the program says what the exit statuses of all commands mean', async () => {
    const { out } = await runCommand(temporaryFolder(), ['--help']);
    expect(out).toMatch(
      /Exit status of every command: 0 no problems found; 1 problems found; 2 the command cannot run; 70 a fault of the program itself\./,
    );
  });

  it('is shown where no command is named, with exit status 2', async () => {
    const { status, err } = await runCommand(temporaryFolder(), []);
    expect(status).toBe(2);
    expect(err).toContain('Usage: meltbounds');
  });
});
