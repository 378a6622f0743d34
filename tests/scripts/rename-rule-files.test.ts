import { describe, expect, test } from 'vitest';
import { renamedFiles, withRenamed, withTable } from '../../scripts/rules/rename-rule-files.ts';

const renamed = (path: string, text: string) =>
  renamedFiles([{ path, text }], 'safety/fumes', 'safety/vapours').map(({ after }) => after);

describe('a rule that is renamed', () => {
  test.each([
    ['src/rules/safety/fumes.ts', 'src/rules/safety/vapours.ts'],
    ['tests/rules/safety/fumes.test.ts', 'tests/rules/safety/vapours.test.ts'],
  ])('moves %s', (path, now) => {
    expect(renamed(path, 'x')).toEqual([{ path: now, text: 'x' }]);
  });

  test.each([
    ["'warning safety/fumes FILE'", "'warning safety/vapours FILE'"],
    ["from '../../rules/safety/fumes.ts'", "from '../../rules/safety/vapours.ts'"],
    ['[fumes](rules/safety-fumes.md)', '[fumes](rules/safety-vapours.md)'],
  ])('is named anew in %s', (text, now) => {
    expect(renamed('docs/a.md', text)).toEqual([{ path: 'docs/a.md', text: now }]);
  });

  test.each(['safety/fumes-again', 'unsafety/fumes', 'safety/fume', 'safety-fumes-again.md'])(
    'leaves %s as it is',
    (text) => {
      expect(renamed('docs/a.md', text)).toEqual([]);
    },
  );

  test.each(['CHANGELOG.md', 'docs/rules/safety-fumes.md', 'src/rules/generated/rule-files.ts'])(
    'leaves %s as it is',
    (path) => {
      expect(renamed(path, 'safety/fumes')).toEqual([]);
    },
  );
});

describe('the table of renamed rules', () => {
  test('leads from every older code to the present one', () => {
    expect(withRenamed({ 'a/one': 'a/two' }, 'a/two', 'b/three')).toEqual({
      'a/one': 'b/three',
      'a/two': 'b/three',
    });
  });

  test('forgets a code that comes back', () => {
    expect(withRenamed({ 'a/one': 'a/two' }, 'a/two', 'a/one')).toEqual({ 'a/two': 'a/one' });
  });

  test('is written in the order of the old codes', () => {
    const table = withRenamed({ 'a/two': 'a/three' }, 'a/one', 'a/four');
    const text =
      "export const renamedRules: Readonly<Record<string, string>> = {\n  'x/y': 'z/w',\n};\nrest\n";
    expect(withTable(text, table)).toBe(
      "export const renamedRules: Readonly<Record<string, string>> = {\n  'a/one': 'a/four',\n  'a/two': 'a/three',\n};\nrest\n",
    );
  });
});
