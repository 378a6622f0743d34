import { rulePageName } from '../../src/report/rules/rule-address.ts';
import { ruleIndex, rulePage } from '../../src/report/rules/rule-page.ts';
import { rules, rulesByClass } from '../../src/rules/engine/rules.ts';

/** The pages of docs/rules by file name: one a rule, and the list of all. */
export function rulePages(): ReadonlyMap<string, string> {
  return new Map([
    ['README.md', ruleIndex(rulesByClass())],
    ...rules.map((rule) => [rulePageName(rule.code), rulePage(rule)] as const),
  ]);
}
