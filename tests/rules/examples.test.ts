import { describe, expect, test } from 'vitest';
import { stringify } from 'yaml';
import type { Finding } from '../../src/registry/finding.ts';
import { loadFiles } from '../../src/registry/load-files.ts';
import { checkRegistry } from '../../src/rules/engine/check-registry.ts';
import type { RuleExample } from '../../src/rules/engine/rule.ts';
import { rules, rulesByClass } from '../../src/rules/engine/rules.ts';
import { exampleRegistry } from '../example-registry.ts';
import { testDay } from '../run-command.ts';

interface Documented {
  readonly code: string;
  readonly judges: string;
  readonly example: RuleExample;
}

const documented: readonly Documented[] = rules.flatMap(({ code, judges, example }) =>
  example === undefined ? [] : [{ code, judges, example }],
);

/** A finding in an example, with its place as people would say it: no line of the sample registry is counted. */
interface Raised {
  readonly finding: Finding;
  readonly place: string;
}

function raisedIn(example: RuleExample, keys: string): Raised[] {
  const { texts, file, exampleLine } = exampleRegistry(example, keys);
  return checkRegistry(loadFiles([{ folder: '', texts }]), { today: testDay }).map((finding) => {
    const own = finding.file === file ? exampleLine(finding.line) : null;
    const line = own === null ? lineOf(texts.get(finding.file) ?? '', finding.line) : `line ${own}`;
    return { finding, place: `${line}, column ${finding.column}` };
  });
}

/** A line of a file by what stands there; by its number where it stands there twice. */
function lineOf(text: string, line: number): string {
  const lines = text.split('\n').map((each) => each.trim());
  const shown = lines[line - 1] ?? '';
  return lines.filter((each) => each === shown).length === 1 ? `\`${shown}\`` : `line ${line} of the file`;
}

const raised = new Map<string, readonly Raised[]>();

/** What the bad example of a rule raises, worked out once for all tests of this file. */
function raisedBy({ code, example }: Documented): readonly Raised[] {
  const known = raised.get(code) ?? raisedIn(example, example.bad);
  raised.set(code, known);
  return known;
}

describe.each(documented)('the documented example of $code', (rule) => {
  test('raises this finding and no other', () => {
    expect(raisedBy(rule).map(({ finding }) => finding.rule)).toEqual([rule.code]);
  });

  test('raises none once it is fixed', () => {
    expect(raisedIn(rule.example, rule.example.good)).toEqual([]);
  });

  test('says what was found, what is allowed, by which source and what to do', () => {
    for (const { finding } of raisedBy(rule)) {
      const { message, found, allowed, source, help } = finding;
      expect(message).toMatch(/^[^\n]{10,}[^.\s]$/);
      if (rule.judges !== 'form') expect({ found, allowed }).toEqual({ found: aText, allowed: aText });
      else expect(found ?? allowed ?? message).toEqual(aText);
      expect(source).toEqual(aText);
      // Help is one or several sentences, or ends with what to write after a colon.
      expect(help).toMatch(/^[^\p{Ll}\n](?:[^\n]*[.?`]|[^\n]*: [^\n]+)$/u);
      if (rule.code.startsWith('safety/')) expect(help).toMatch(/manual|local codes|qualified people/);
    }
  });
});

const aText: unknown = expect.stringMatching(/^\S.*$/);

/** `npx vitest run tests/rules/examples.test.ts --update` writes these files. */
test.each([...rulesByClass().keys()])('the examples of %s are found as written down', async (name) => {
  const ofClass = documented.filter(({ code }) => code.startsWith(`${name}/`));
  const found = ofClass.flatMap((rule) => raisedBy(rule));
  const entries = found.map(({ finding: { rule, severity, file, message }, place }) => [
    rule,
    { severity, file, place, message },
  ]);
  const text = stringify(Object.fromEntries(entries), { lineWidth: 0 });
  await expect(text).toMatchFileSnapshot(`examples/${name}.yaml`);
});
