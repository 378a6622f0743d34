import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { methodNames } from '../../src/bench/method-facts.ts';
import { checkShape } from '../../src/registry/form/check-shape.ts';

const folder = new URL('../../docs/bench/', import.meta.url);
const pageOf = (name: string) => readFileSync(new URL(`${name}.md`, folder), 'utf8');

/** Content of the first block of a language in a page. */
function block(page: string, language: string): string {
  const [, content] = new RegExp(`\`\`\`${language}\\n([\\s\\S]*?)\`\`\``).exec(page) ?? [];
  if (content === undefined) throw new Error(`no block of ${language}`);
  return content;
}

test('there is a page for every method, and the index names each', () => {
  const pages = readdirSync(folder).filter((name) => name !== 'README.md');
  expect(pages.sort()).toEqual([...methodNames, 'accuracy'].map((name) => `${name}.md`).sort());
  const index = pageOf('README');
  for (const name of methodNames) expect(index).toContain(`[${name}](${name}.md)`);
});

describe.each(methodNames)('the page of %s', (name) => {
  const page = pageOf(name);

  test('shows a trial that fits the schema', () => {
    const trial: unknown = parse(block(page, 'yaml'));
    expect(checkShape('trial', trial).hits).toEqual([]);
    expect(trial).toMatchObject({ method: name });
  });

  test('names its sources', () => {
    expect(page).toMatch(/^Sources: \S/m);
  });
});
