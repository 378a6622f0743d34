import { describe, expect, it } from 'vitest';
import { wantsColour } from '../../src/commands/cli-context.ts';
import { checked, runCommand } from '../run-command.ts';
import { registryWithError } from '../sample-registry.ts';

const filament = 'filaments/oakhollow/daisy-pla.yaml';

describe('the JSON report', () => {
  it('has the same keys in the same order for every finding', async () => {
    const registry = registryWithError();
    registry.edit('jobs/hook.yaml', 'id: hook', '\tid: hook');
    const { findings, summary } = await checked(registry.cwd);

    expect(findings.length).toBeGreaterThan(1);
    for (const finding of findings) {
      expect(Object.keys(finding)).toEqual(
        'rule,severity,message,file,line,column,pointer,found,allowed,source,help'.split(','),
      );
    }
    expect(Object.keys(summary)).toEqual('profiles,errors,warnings,notes,acknowledged'.split(','));
  });

  it('is one line of keys a finding and nothing else on either stream', async () => {
    const { out, err } = await runCommand(registryWithError().cwd, ['check', '--format', 'json']);
    expect(err).toBe('');
    expect(out).toBe(`${JSON.stringify(JSON.parse(out), null, 2)}\n`);
    expect(Object.keys(JSON.parse(out))).toEqual(['format', 'findings', 'summary']);
  });

  it('names places by path, line, column and pointer', async () => {
    const { findings } = await checked(registryWithError().cwd);
    expect(findings).toMatchObject([
      { file: `profiles/${filament}`, line: 25, column: 12, pointer: '/meltFlow/0/value', found: '22' },
    ]);
  });

  it('is ordered by file and place', async () => {
    const registry = registryWithError();
    registry.edit(filament, 'diameterTolerance: 0.03 mm', 'diameterTolerance: 0.03');
    registry.edit('jobs/hook.yaml', 'id: hook', 'id: hok');
    registry.edit('machines/plumstead/wren.yaml', 'basis: assumed', 'basis: guessed');
    const { findings } = await checked(registry.cwd);

    const wanted = [
      [filament, 'diameterTolerance: 0.03\n'],
      [filament, 'value: 22\n'],
      ['jobs/hook.yaml', 'id: hok'],
      ['machines/plumstead/wren.yaml', 'basis: guessed'],
    ] as const;
    expect(findings.map(({ file, line }) => `${file}:${line}`)).toEqual(
      wanted.map(([file, stretch]) => `profiles/${file}:${registry.placeOf(file, stretch).line}`),
    );
  });
});

describe('colour', () => {
  it('marks the severity and nothing but colour differs', async () => {
    const { cwd } = registryWithError();
    const plain = await runCommand(cwd, ['check']);
    const coloured = await runCommand(cwd, ['check'], { colour: true });

    expect(plain.out).not.toContain('\u001b');
    expect(coloured.out).toContain('\u001b[31merror\u001b[39m');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: escape sequences of colours start with one.
    expect(coloured.out.replaceAll(/\u001b\[\d+m/g, '')).toBe(plain.out);
  });

  it('is never in JSON', async () => {
    const { out } = await runCommand(registryWithError().cwd, ['check', '--format', 'json'], {
      colour: true,
    });
    expect(out).not.toContain('\u001b');
  });

  it.each<[string, Record<string, string>, boolean, boolean]>([
    ['a terminal', {}, true, true],
    ['a pipe', {}, false, false],
    ['NO_COLOR', { NO_COLOR: '1' }, true, false],
    ['an empty NO_COLOR', { NO_COLOR: '' }, true, true],
    ['NO_COLOR and FORCE_COLOR', { NO_COLOR: '1', FORCE_COLOR: '1' }, true, false],
    ['FORCE_COLOR', { FORCE_COLOR: '1' }, false, true],
    ['FORCE_COLOR=0', { FORCE_COLOR: '0' }, false, false],
    ['a dumb terminal', { TERM: 'dumb' }, true, false],
  ])('with %s', (_, env, isTerminal, coloured) => {
    expect(wantsColour(env, isTerminal)).toBe(coloured);
  });
});
