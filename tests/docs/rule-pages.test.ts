import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { renamedRulesPage } from '../../scripts/generate/renamed-rules-page.ts';
import { rulePages } from '../../scripts/generate/rule-pages.ts';
import { renamedRules } from '../../src/registry/migrations/renamed-rules.ts';
import { rules, rulesByClass } from '../../src/rules/engine/rules.ts';

const docs = new URL('../../docs/', import.meta.url);

test('docs/rules holds the page of every rule, as the rule itself tells it, and no other', () => {
  const folder = new URL('rules/', docs);
  const present = readdirSync(folder).map(
    (name) => [name, readFileSync(new URL(name, folder), 'utf8')] as const,
  );
  expect(new Map(present)).toEqual(new Map([...rulePages()].sort(([a], [b]) => (a < b ? -1 : 1))));
});

test('docs/renamed-rules.md tells every old code', () => {
  expect(readFileSync(new URL('renamed-rules.md', docs), 'utf8')).toBe(renamedRulesPage());
  for (const [old, now] of Object.entries(renamedRules))
    expect(renamedRulesPage()).toContain(`| \`${old}\` | [${now}](rules/${now.replace('/', '-')}.md) |`);
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
