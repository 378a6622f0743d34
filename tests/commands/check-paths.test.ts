import { cpSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checked } from '../run-command.ts';
import { registryWithError, sampleRegistry, temporaryFolder } from '../sample-registry.ts';

const filament = 'filaments/oakhollow/daisy-pla.yaml';

function placesOf(findings: readonly { readonly file: string; readonly rule: string }[]): string[] {
  return findings.map(({ file, rule }) => `${file} ${rule}`);
}

describe('what is checked', () => {
  it('is one file, with the registry around it as its background', async () => {
    const registry = registryWithError();
    registry.edit('jobs/hook.yaml', 'id: hook', 'id: hok');

    const { findings, summary } = await checked(registry.cwd, `profiles/${filament}`);

    expect(placesOf(findings)).toEqual([`profiles/${filament} units/bare-number`]);
    expect(summary.profiles).toBe(1);
  });

  it('is a folder of a registry', async () => {
    const registry = registryWithError();
    registry.edit('jobs/hook.yaml', 'id: hook', 'id: hok');

    const { findings, summary } = await checked(registry.cwd, 'profiles/jobs');

    expect(placesOf(findings)).toEqual(['profiles/jobs/hook.yaml identity/id-path']);
    expect(summary.profiles).toBe(1);
  });

  it.each(['profiles', '.', './profiles/'])('is the registry at %j', async (path) => {
    const registry = sampleRegistry();
    expect((await checked(registry.cwd, path)).summary.profiles).toBe(registry.size());
  });

  it('is every path that is named, each once', async () => {
    const { summary } = await checked(
      sampleRegistry().cwd,
      'profiles/jobs',
      'profiles/jobs',
      'profiles/sources',
    );
    expect(summary.profiles).toBe(5);
  });

  it('includes the file of readings of a trial', async () => {
    const registry = sampleRegistry();
    registry.edit('trials/2026/wren-daisy-pla-230.csv', '20,400,1.188', '20,400,11.88');

    const { findings } = await checked(registry.cwd, 'profiles/trials/2026/wren-daisy-pla-230.yaml');

    expect(placesOf(findings)).toEqual(['profiles/trials/2026/wren-daisy-pla-230.csv evidence/unreducible']);
    expect(findings[0]?.message).toMatch(/From this follows: The readings are not those that /);
  });

  it('may be a file outside of any registry, with that of the working directory as its background', async () => {
    const registry = sampleRegistry();
    const copy = registry.read('jobs/hook.yaml').replace('id: hook', 'id: shelf');
    writeFileSync(join(registry.cwd, 'shelf.yaml'), copy.replace('120 {count}', '120'));

    const { findings, summary } = await checked(registry.cwd, 'shelf.yaml');

    expect(summary.profiles).toBe(1);
    expect(placesOf(findings)).toContain('shelf.yaml units/bare-number');
  });

  it('counts a stray file inside of the registry once', async () => {
    const registry = sampleRegistry();
    registry.write('shelf.yaml', registry.read('jobs/hook.yaml').replace('id: hook', 'id: shelf'));

    const { findings, summary } = await checked(registry.cwd, 'profiles/shelf.yaml');

    expect(placesOf(findings)).toEqual(['profiles/shelf.yaml identity/id-path']);
    expect(summary.profiles).toBe(1);
  });

  it('does not take a folder further up for a registry because of its name', async () => {
    const cwd = temporaryFolder();
    mkdirSync(join(cwd, 'jobs/42/checkout/notes'), { recursive: true });
    writeFileSync(join(cwd, 'secret.yaml'), 'kind: job\n');
    writeFileSync(join(cwd, 'jobs/42/checkout/notes/shelf.yaml'), 'kind: job\nid: shelf\n');

    const { findings } = await checked(cwd, 'jobs/42/checkout/notes/shelf.yaml');

    expect(new Set(findings.map(({ file }) => file))).toEqual(new Set(['jobs/42/checkout/notes/shelf.yaml']));
  });

  it('is all registries that are named, the later ones resting on the earlier ones', async () => {
    const shared = sampleRegistry();
    const own = temporaryFolder();
    mkdirSync(join(own, 'profiles/filaments/oakhollow'), { recursive: true });
    cpSync(
      shared.path('filaments/oakhollow/clover-petg.yaml'),
      join(own, 'profiles/filaments/oakhollow/sage-petg.yaml'),
    );
    const alone = await checked(own);
    const named = ['--registry', join(shared.cwd, 'profiles'), '--registry', 'profiles'];
    const both = await checked(own, '--all', ...named);

    expect(placesOf(alone.findings)).toContain(
      'profiles/filaments/oakhollow/sage-petg.yaml references/dangling',
    );
    expect(both.summary.profiles).toBe(shared.size() + 1);
    expect(new Set(both.findings.map(({ rule }) => rule))).toEqual(
      new Set(['identity/id-path', 'identity/duplicate-id']),
    );
  });

  it('is a registry once, however often it is named', async () => {
    const registry = sampleRegistry();
    const { findings, summary } = await checked(
      registry.cwd,
      '--registry',
      'profiles',
      '--registry',
      './profiles',
    );
    expect({ findings, profiles: summary.profiles }).toEqual({ findings: [], profiles: registry.size() });
  });

  it('is judged by the day that is given', async () => {
    const { findings } = await checked(sampleRegistry().cwd, '--today', '2026-02-11');
    expect(placesOf(findings)).toEqual(['profiles/trials/2026/wren-clover-petg-245.yaml dates/future']);
  });
});
