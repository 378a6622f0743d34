import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { compareText } from '../../src/registry/finding.ts';
import { checkRegistry } from '../../src/rules/engine/check-registry.ts';
import { corpusDay, expectedWarnings, trueRegistry, trueTexts } from './true-profiles.ts';

const findings = checkRegistry(trueRegistry(), { today: corpusDay });

test('nothing true is refused', () => {
  expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
});

test('true profiles get the warnings that a colleague would give, and no others', () => {
  const found = findings.flatMap(({ severity, rule, file }) =>
    severity === 'warning' ? [`${file} ${rule}`] : [],
  );
  const expected = expectedWarnings().map(({ rule, file }) => `${file} ${rule}`);
  expect(found.sort(compareText)).toEqual(expected.sort(compareText));
});

test('every expected warning says why it is right', () => {
  expect(expectedWarnings().filter(({ reason }) => reason.length < 20)).toEqual([]);
});

test('the corpus is large, and its things are invented', () => {
  const things = [...trueTexts()].filter(([path]) => /^(?:filaments|machines)\//.test(path));
  expect(things.length).toBeGreaterThanOrEqual(180);
  const marked = ([, text]: [string, string]) => (parse(text) as { invented?: boolean }).invented === true;
  expect(things.filter((thing) => !marked(thing))).toEqual([]);
});
