/**
 * How near each rule comes to the true profiles of the tests: quantities of theirs are moved by ever larger factors, and
 * the smallest factor at which a rule gives an error or a warning is printed. A rule near 1 is about to refuse what is real,
 * and one that nothing raises dozes, unless it judges something else than numbers.
 * Usage: npm run distance [-- QUANTITIES [SEED]]
 */
import { stripVTControlCharacters } from 'node:util';
import { judgingRules } from '../src/rules/engine/rules.ts';
import { corpusDay, trueTexts } from '../tests/true-profiles/true-profiles.ts';
import { ruleDistances } from './distance/rule-distances.ts';

const [count = '600', seed = 'distance'] = process.argv.slice(2);
if (!/^[1-9]\d*$/.test(count)) throw new RangeError(`QUANTITIES is a whole number above 0, not "${count}"`);
const distances = ruleDistances(trueTexts(), { count: Number(count), seed, today: corpusDay });
const rows = [...distances].sort(([one, { factor }], [other, { factor: farther }]) =>
  factor === farther ? (one < other ? -1 : 1) : factor - farther,
);
console.log(`By ${count} quantities of the true profiles, seed "${stripVTControlCharacters(seed)}":\n`);
for (const [rule, { factor, file, pointer, before, after }] of rows) {
  console.log(
    `${String(factor).padStart(5)}  ${rule.padEnd(42)} ${file}${pointer}: "${before}" became "${after}"`,
  );
}
const numeric = ['plausibility', 'consistency', 'safety', 'evidence'];
const asleep = judgingRules
  .map(({ code }) => code)
  .filter((code) => numeric.includes(code.split('/')[0] ?? '') && !distances.has(code));
console.log(`\nRaised by none of it: ${asleep.join(', ')}`);
