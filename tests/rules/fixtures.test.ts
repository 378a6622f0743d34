import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { rules } from '../../src/rules/engine/rules.ts';
import { checked } from '../run-command.ts';
import { sampleRegistry } from '../sample-registry.ts';

const fixtures = fileURLToPath(new URL('./fixtures', import.meta.url));

const codes = foldersIn(fixtures).flatMap((family) =>
  foldersIn(join(fixtures, family)).map((name) => `${family}/${name}`),
);

function foldersIn(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? [entry.name] : [],
  );
}

function examplesOf(code: string, kind: 'valid' | 'invalid'): string[] {
  return foldersIn(join(fixtures, code)).filter((name) => name.startsWith(`${kind}-`));
}

/** Those that a rule's page shows are run by the test of the documented examples, which also writes them. */
function isOwn(example: string): boolean {
  return !example.endsWith('-documented');
}

async function findingsWith(folder: string) {
  const registry = sampleRegistry();
  registry.overlay(folder);
  return (await checked(registry.cwd)).findings;
}

describe.each(codes)('%s', (code) => {
  it('is a rule, and has examples of both kinds', () => {
    expect(rules.map((rule) => rule.code)).toContain(code);
    expect(examplesOf(code, 'valid')).not.toEqual([]);
    expect(examplesOf(code, 'invalid')).not.toEqual([]);
  });

  it.each(examplesOf(code, 'valid').filter(isOwn))('accepts %s', async (example) => {
    expect(await findingsWith(join(fixtures, code, example))).toEqual([]);
  });

  it.each(examplesOf(code, 'invalid').filter(isOwn))('finds %s, and nothing else', async (example) => {
    const folder = join(fixtures, code, example);
    const { file, line, column } = JSON.parse(readFileSync(join(folder, 'expected.json'), 'utf8'));

    const places = (await findingsWith(folder)).map((found) => ({
      rule: found.rule,
      place: `${found.file}:${found.line}:${found.column}`,
    }));

    expect(places).toEqual([{ rule: code, place: `profiles/${file}:${line}:${column}` }]);
  });
});

it('has a folder for every rule whose page shows an example', () => {
  const shown = rules.filter(({ example }) => example !== undefined);
  expect(shown.map(({ code }) => code).filter((code) => !codes.includes(code))).toEqual([]);
});
