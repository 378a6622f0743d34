import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { rulePages } from '../../scripts/generate/rule-pages.ts';
import { rules, rulesByClass } from '../../src/rules/engine/rules.ts';

const docs = new URL('../../docs/', import.meta.url);

test('docs/rules holds the page of every rule, as the rule itself tells it, and no other', () => {
  const folder = new URL('rules/', docs);
  const present = readdirSync(folder).map(
    (name) => [name, readFileSync(new URL(name, folder), 'utf8')] as const,
  );
  expect(new Map(present)).toEqual(new Map([...rulePages()].sort(([a], [b]) => (a < b ? -1 : 1))));
});

test('the index links to every rule', () => {
  const index = readFileSync(new URL('rules/README.md', docs), 'utf8');
  for (const { code } of rules) expect(index).toContain(`[${code}](${code.replace('/', '-')}.md)`);
});

test('docs/rules.md says what each class of rule protects', () => {
  const overview = readFileSync(new URL('rules.md', docs), 'utf8');
  const described = [...overview.matchAll(/^\| `([a-z]+)` \|/gm)].map(([, name]) => name);
  expect(described).toEqual(expect.arrayContaining([...rulesByClass().keys()]));
});
