import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { rules as allRules, ruleOf } from '../../src/rules/engine/rules.ts';
import { inPrint } from '../../src/units/in-print.ts';
import { runCommand, unwrapped } from '../run-command.ts';

async function rules(...args: string[]) {
  return runCommand('.', ['rules', ...args]);
}

it('lists every rule under its class, with severity and statement in columns', async () => {
  const { status, out } = await rules();
  expect(status).toBe(0);
  expect(out).toMatch(new RegExp(`^${allRules.length} rules\\. `));
  const words = unwrapped(out);
  for (const { code, severity, statement } of allRules)
    expect(words).toContain(` ${code} ${severity} ${inPrint(statement)} `);
  expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
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
    out: `5 rules. One rule in full: \`meltbounds rules CODE\`

acknowledgement
  rule                          severity  what must hold
  acknowledgement/expired       warning   An acknowledgement is valid up to and
                                          including its date.
  acknowledgement/not-allowed   error     Refuted limits, missing provenance,
                                          dangers to people and whole profiles
                                          cannot be acknowledged.
  acknowledgement/too-long      error     A finding is acknowledged for at most
                                          twelve months.
  acknowledgement/unknown-rule  error     An acknowledgement names an existing
                                          rule.
  acknowledgement/unused        error     An acknowledgement accepts one
                                          existing finding, of the value that it
                                          names.
`,
  });
});

it('explains one rule in the words of its page', async () => {
  const { status, out } = await rules('units/bare-number', '--format', 'markdown');
  const page = readFileSync(new URL('../../docs/rules/units-bare-number.md', import.meta.url), 'utf8');
  expect({ status, out }).toEqual({ status: 0, out: page });
  const lines = (await rules('units/bare-number')).out.split('\n');
  expect(lines).toEqual(expect.arrayContaining(['Why', 'Source', 'Example', '  Right:']));
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
  ['plausibility/strand-feed', 'It is called "plausibility/filament-feed" now.'],
])('cannot explain %s, and says what to do', async (code, help) => {
  expect(await rules(code)).toEqual({ status: 2, out: '', err: `There is no rule "${code}".\n${help}\n` });
});
