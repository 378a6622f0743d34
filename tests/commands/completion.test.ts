import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCommand } from '../run-command.ts';
import { temporaryFolder } from '../sample-registry.ts';

async function script(shell: string): Promise<string> {
  const { out, status } = await runCommand(temporaryFolder(), ['completion', shell]);
  expect(status).toBe(0);
  return out;
}

const isPresent = (shell: string) => spawnSync(shell, ['-c', 'exit 0']).status === 0;

/** What bash offers for a command line whose last word is being typed. */
function offered(bash: string, ...words: string[]): string[] {
  const line = words.map((word) => `'${word}'`).join(' ');
  const simulation = `${bash}
COMP_WORDS=(${line}); COMP_CWORD=${words.length - 1}
_meltbounds
printf '%s\\n' "\${COMPREPLY[@]}"`;
  const { stdout, stderr } = spawnSync('bash', ['-c', simulation], { encoding: 'utf8' });
  expect(stderr).toBe('');
  return stdout.split('\n').filter((word) => word !== '');
}

describe.skipIf(!isPresent('bash'))('in bash', () => {
  it('a command is completed', async () => {
    const bash = await script('bash');
    expect(offered(bash, 'meltbounds', 'ch')).toEqual(['check']);
    expect(offered(bash, 'meltbounds', '')).toEqual(expect.arrayContaining(['check', 'diff', '--version']));
  });

  it('an option of the command is completed', async () => {
    const bash = await script('bash');
    expect(offered(bash, 'meltbounds', 'check', '--fo')).toEqual(['--format']);
    expect(offered(bash, 'meltbounds', 'diff', '--fail')).toEqual([]);
  });

  it('the values of an option are offered', async () => {
    const bash = await script('bash');
    expect(offered(bash, 'meltbounds', 'check', '--fail-on', '')).toEqual(['error', 'warning', 'note']);
    expect(offered(bash, 'meltbounds', 'diff', 'main', '--format', 'm')).toEqual(['markdown']);
  });

  it('an argument with a closed list of values is completed', async () => {
    expect(offered(await script('bash'), 'meltbounds', 'completion', 'z')).toEqual(['zsh']);
  });

  it('file names are left to the shell', async () => {
    const bash = await script('bash');
    expect(offered(bash, 'meltbounds', 'check', '')).toEqual([]);
    expect(offered(bash, 'meltbounds', 'check', '--registry', '')).toEqual([]);
    expect(bash).toContain('complete -o default');
  });
});

describe.each(['bash', 'zsh', 'fish'])('the script for %s', (shell) => {
  it.skipIf(!isPresent(shell))('has no error of syntax', async () => {
    const path = join(temporaryFolder(), 'script');
    writeFileSync(path, await script(shell));
    const { status, stderr } = spawnSync(shell, ['-n', path], { encoding: 'utf8' });
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
  });

  it('knows every command and the values of options', async () => {
    const text = await script(shell);
    const { out } = await runCommand(temporaryFolder(), ['--help']);
    const commands = out.slice(out.indexOf('Commands:'), out.indexOf('Examples:'));
    for (const [, name = ''] of commands.matchAll(/^ {2}([a-z]+) /gm))
      expect(text).toMatch(new RegExp(`\\b${name}\\b`));
    expect(text).toContain('text json sarif junit annotations');
  });

  it('quotes what descriptions hold', async () => {
    const unquoted = (await script(shell)).replace(/'(?:[^'\\]|\\.)*'/g, '').split('\n');
    expect(unquoted.filter((line) => !line.startsWith('#') && line.includes('`'))).toEqual([]);
  });
});

it('no other shell is known', async () => {
  const { status, err } = await runCommand(temporaryFolder(), ['completion', 'tcsh']);
  expect(status).toBe(2);
  expect(err).toContain('Allowed choices are bash, zsh, fish');
});
