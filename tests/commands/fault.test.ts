import { spawnSync } from 'node:child_process';
import { openSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { faultText } from '../../src/commands/exit.ts';
import { bundledProgram } from '../run-command.ts';
import { sampleRegistry, temporaryFolder } from '../sample-registry.ts';

/** Runs the program after a module that breaks something it relies on. */
function runBroken(breaking: string, ...args: string[]) {
  const module = join(temporaryFolder(), 'break.mjs');
  writeFileSync(module, breaking);
  const { cwd } = sampleRegistry();
  return spawnSync(process.execPath, ['--import', module, bundledProgram, ...args], {
    cwd,
    encoding: 'utf8',
  });
}

describe('a fault of the program itself', () => {
  it('ends with one line that asks for a report, and status 70', () => {
    const { status, stderr, stdout } = runBroken(
      "Date.prototype.toISOString = () => { throw new TypeError('no\\n\\u001b[31mday'); };",
      'check',
    );
    expect({ status, stdout }).toEqual({ status: 70, stdout: '' });
    expect(stderr).toMatch(
      /^meltbounds \S+ has a fault of its own: TypeError: no \\u\{1b\}\[31mday at .*\. Please report this line with the command that you typed\.\n$/,
    );
  });

  it.each([
    ['a promise', "Promise.reject(new Error('late'))"],
    ['a timer', "setTimeout(() => { throw 'a word'; })"],
  ])('ends so from %s that nobody waits for, too', (_, breaking) => {
    const { status, stderr } = runBroken(
      `Date.prototype.toISOString = () => { ${breaking}; return '2026-06-01'; };`,
      'check',
    );
    expect(status).toBe(70);
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
  });

  it('is told even where it is no error', () => {
    expect(faultText(undefined, '1.2.3')).toBe(
      'meltbounds 1.2.3 has a fault of its own: undefined. Please report this line with the command that you typed.\n',
    );
  });
});

describe('output that cannot be written', () => {
  it('ends with words and status 2', () => {
    const { cwd } = sampleRegistry();
    const { status, stderr } = spawnSync(process.execPath, [bundledProgram, 'rules'], {
      cwd,
      encoding: 'utf8',
      stdio: ['ignore', openSync('/dev/full', 'w'), 'pipe'],
    });
    expect({ status, stderr }).toEqual({
      status: 2,
      stderr: 'Standard output cannot be written (ENOSPC).\nCheck the space on the disk.\n',
    });
  });

  it('ends so where the reader goes before the end', () => {
    const { cwd } = sampleRegistry();
    const command = `"${process.execPath}" "${bundledProgram}" rules --format json 2>err | true; echo "\${PIPESTATUS[0]}"`;
    const { stdout } = spawnSync('bash', ['-c', command], { cwd, encoding: 'utf8' });
    expect({ status: stdout, err: readFileSync(join(cwd, 'err'), 'utf8') }).toEqual({
      status: '2\n',
      err: 'Standard output was closed before everything was written (EPIPE).\n',
    });
  });
});
