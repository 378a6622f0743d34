import { describe, expect, test } from 'vitest';
import { loadRegistry } from '../../src/host/load-registry.ts';
import type { Finding } from '../../src/registry/finding.ts';
import { checkRegistry } from '../../src/rules/engine/check-registry.ts';
import { rules } from '../../src/rules/engine/rules.ts';
import { exampleRegistry } from '../example-registry.ts';
import { testDay } from '../run-command.ts';

function findingsIn(cwd: string): Finding[] {
  return checkRegistry(loadRegistry(['profiles'], cwd), { today: testDay });
}

function codeAndPlace({ rule, file, line, message }: Finding): string {
  return `${rule} ${file}:${line} ${message}`;
}

/** As the fixtures of rules state it. */
function placesOf([finding]: readonly Finding[]): string {
  const { file = '', line, column } = finding ?? {};
  return `{"file": "${file.replace(/^profiles\//, '')}", "line": ${line}, "column": ${column}}\n`;
}

const examples = rules.flatMap(({ code, example }) => (example === undefined ? [] : [{ code, example }]));

describe.each(examples)('the documented example of $code', ({ code, example }) => {
  test('raises this finding and no other', async () => {
    const { cwd, file, text } = exampleRegistry(example, example.bad);
    const findings = findingsIn(cwd);
    expect(findings.map(codeAndPlace)).toEqual([expect.stringContaining(`${code} `)]);
    // Help is a sentence, whoever wrote it.
    for (const { help } of findings) expect(help ?? 'None').toMatch(/^[^\p{Ll}]/u);
    if (code.startsWith('safety/'))
      for (const { help } of findings) expect(help).toMatch(/manual|local codes|qualified people/);
    const folder = `fixtures/${code}/invalid-documented`;
    await expect(text).toMatchFileSnapshot(`${folder}/${file}`);
    await expect(placesOf(findings)).toMatchFileSnapshot(`${folder}/expected.json`);
  });

  test('raises none once it is fixed', async () => {
    const { cwd, file, text } = exampleRegistry(example, example.good);
    expect(findingsIn(cwd).map(codeAndPlace)).toEqual([]);
    await expect(text).toMatchFileSnapshot(`fixtures/${code}/valid-documented/${file}`);
  });
});

test('every rule that judges readable profiles has an example', () => {
  const without = rules.filter(({ example }) => example === undefined).map(({ code }) => code);
  expect(without.filter((code) => !/^(?:file|syntax)\//.test(code))).toEqual([]);
});

describe('every rule', () => {
  test('has a code of its own, in the form CLASS/NAME', () => {
    const codes = rules.map(({ code }) => code);
    expect(new Set(codes).size).toBe(codes.length);
    expect(codes.filter((code) => !/^[a-z]+\/[a-z]+(?:-[a-z]+)*$/.test(code))).toEqual([]);
  });

  test.each(rules.map((rule) => [rule.code, rule] as const))(
    '%s says what, why and where from',
    (_, rule) => {
      for (const text of [rule.statement, rule.rationale, rule.source]) expect(text.trim()).toBe(text);
      expect(rule.statement).toMatch(/^[^\n]{10,160}\.$/);
      expect(rule.rationale).toMatch(/^[^\n]{20,}\.$/);
      expect(rule.source.length).toBeGreaterThan(10);
    },
  );

  test('says something that no other says', () => {
    const statements = rules.map(({ statement }) => statement);
    expect(new Set(statements).size).toBe(statements.length);
  });
});
