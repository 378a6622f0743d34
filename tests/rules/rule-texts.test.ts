import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { blankMark } from '../../scripts/rules/new-rule-files.ts';
import { rulePageName } from '../../src/report/rules/rule-address.ts';
import { rules, rulesByClass } from '../../src/rules/engine/rules.ts';

const root = new URL('../../', import.meta.url);

describe.each(rules.map((rule) => [rule.code, rule] as const))('the rule %s', (code, rule) => {
  test('has a code in the form CLASS/NAME', () => {
    expect(code).toMatch(/^[a-z]+\/[a-z]+(?:-[a-z]+)*$/);
  });

  test('says in one line what must hold, and in sentences why', () => {
    expect(rule.statement).toMatch(/^\S[^\n]{8,158}\S\.$|^\S[^\n]{8,158}\.$/);
    expect(rule.rationale).toMatch(/^\S[^\n]{18,}\.$/);
  });

  test('names its source', () => {
    expect(rule.source).toMatch(/^\S[^\n]{10,}\S$/);
  });

  test('has a page', () => {
    expect(existsSync(new URL(`docs/rules/${rulePageName(code)}`, root))).toBe(true);
  });

  test('has no blank left', () => {
    expect(blanksIn(`src/rules/${code}.ts`)).toEqual([]);
  });

  test('exports nothing but itself', () => {
    const text = readFileSync(new URL(`src/rules/${code}.ts`, root), 'utf8');
    expect(text.match(/^export .*?[:;{]/gm)).toEqual(['export const rule:']);
  });
});

/** The lines of a file that `npm run new-rule` has left to a person. */
function blanksIn(path: string): string[] {
  const lines = readFileSync(new URL(path, root), 'utf8').split('\n');
  return lines.filter((line) => line.includes(blankMark)).map((line) => line.trim());
}

describe('the rules', () => {
  test('have changesets without blanks', () => {
    const files = readdirSync(new URL('.changeset/', root)).filter((name) => name.endsWith('.md'));
    expect(files.flatMap((name) => blanksIn(`.changeset/${name}`))).toEqual([]);
  });

  test('each say something that no other says', () => {
    const statements = rules.map(({ statement }) => statement);
    expect(statements.filter((statement, index) => statements.indexOf(statement) !== index)).toEqual([]);
  });

  test('all have an example, but for those that no text of one profile can break', () => {
    const without = rules.filter(({ example }) => example === undefined).map(({ code }) => code);
    expect(without.filter((code) => !/^(?:(?:file|syntax)\/|evidence\/misremembered$)/.test(code))).toEqual(
      [],
    );
  });

  test('have their tests in the folder of a class', () => {
    const folders = readdirSync(new URL('tests/rules/', root), { withFileTypes: true })
      .filter((entry) => entry.isDirectory())
      .map(({ name }) => name);
    expect(['engine', 'examples', ...rulesByClass().keys()]).toEqual(expect.arrayContaining(folders));
  });
});
