import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { simulations } from '../../scripts/methods/simulations.ts';
import { methodNames } from '../../src/bench/method-facts.ts';

const page = readFileSync('docs/bench/accuracy.md', 'utf8');

test('every bench method is simulated, and has a table on the page of accuracies', () => {
  expect(Object.keys(simulations).toSorted()).toEqual(methodNames.toSorted());
  for (const name of methodNames) expect(page).toContain(`\n### ${name}\n`);
  expect(page).toContain('\n### Limit against temperature\n');
});

test('every class of a simulator has its rows there', () => {
  for (const [name, simulators] of Object.entries(simulations)) {
    const table = page.split(`\n### ${name}\n`)[1]?.split('\n### ')[0] ?? '';
    const kinds = new Set(
      simulators.flatMap((simulate) => Array.from({ length: 64 }, (_, index) => simulate(index).kind)),
    );
    for (const kind of kinds) expect(table).toContain(`| ${kind} |`);
  }
});
