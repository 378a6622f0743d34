import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { rules as allRules, ruleOf } from '../../src/rules/engine/rules.ts';
import { runCommand } from '../run-command.ts';

async function rules(...args: string[]) {
  return runCommand('.', ['rules', ...args]);
}

it('lists every rule under its class, with severity and statement in columns', async () => {
  const { status, out } = await rules();
  expect(status).toBe(0);
  const listed = out
    .split('\n')
    .flatMap((line) => /^ {2}(\S+) +(error|warning|note) +(\S.*)$/.exec(line)?.slice(1, 4) ?? []);
  expect(listed).toHaveLength(3 * allRules.length);
  for (const { code, severity, statement } of allRules) {
    const at = listed.indexOf(code);
    expect(listed.slice(at, at + 3)).toEqual([code, severity, statement]);
  }
  const columns = out.split('\n').flatMap((line) => / {2}(?=error |warning |note )/.exec(line)?.index ?? []);
  expect(new Set(columns).size).toBe(1);
});

it('names each class once', async () => {
  const { out } = await rules();
  const headings = out.split('\n').filter((line) => /^[a-z]+$/.test(line));
  expect(new Set(headings).size).toBe(headings.length);
  expect(headings).toEqual(expect.arrayContaining(['file', 'units', 'evidence', 'style', 'acknowledgement']));
});

it('lists one class', async () => {
  const { status, out } = await rules('acknowledgement');
  expect({ status, out }).toEqual({
    status: 0,
    out: `acknowledgement
  acknowledgement/expired       warning  An acknowledgement holds up to and including its date.
  acknowledgement/unknown-rule  error    An acknowledgement names a rule that there is.
  acknowledgement/unused        error    An acknowledgement accepts a finding that there is.

One rule in full: meltbounds rules CODE
`,
  });
});

it('explains one rule in the words of its page', async () => {
  const { status, out } = await rules('units/bare-number');
  const page = readFileSync(new URL('../../docs/rules/units-bare-number.md', import.meta.url), 'utf8');
  expect({ status, out }).toEqual({ status: 0, out: page });
  for (const part of ['## Why', '## Source', '## Example', 'Wrong', 'Right']) expect(out).toContain(part);
});

it('gives the same to programs', async () => {
  const { out } = await rules('units/below-absolute-zero', '--format', 'json');
  const { judges: _, ...rule } = ruleOf('units/below-absolute-zero');
  expect(JSON.parse(out)).toEqual({ format: 'meltbounds-rules/1', rules: [rule] });
});

it('gives all of them to programs, each with the same keys', async () => {
  const { rules: listed } = JSON.parse((await rules('--format', 'json')).out) as { rules: object[] };
  expect(listed).toHaveLength(allRules.length);
  expect(new Set(listed.map((rule) => Object.keys(rule).join(' '))).size).toBe(1);
});

it.each([
  ['units/bare-nubmer', 'Did you mean "units/bare-number"?'],
  ['bare-number', 'Did you mean "units/bare-number"?'],
  ['nonsense', '`meltbounds rules` lists them all.'],
])('cannot explain %s, and says what to do', async (code, help) => {
  expect(await rules(code)).toEqual({ status: 2, out: '', err: `There is no rule "${code}".\n${help}\n` });
});
