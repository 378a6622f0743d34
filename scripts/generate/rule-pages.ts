import { rulePageName } from '../../src/report/rules/rule-address.ts';
import { ruleDocument } from '../../src/report/rules/rule-document.ts';
import { ruleIndexDocument } from '../../src/report/rules/rule-list-document.ts';
import { rules, rulesByClass } from '../../src/rules/engine/rules.ts';
import { formatDocument } from '../../src/units/format-document.ts';

/** The pages of docs/rules by file name: one a rule, and the list of all. */
export function rulePages(): ReadonlyMap<string, string> {
  return new Map([
    ['README.md', formatDocument(ruleIndexDocument(rulesByClass()), 'markdown', { aligned: false })],
    ...rules.map(
      (rule) => [rulePageName(rule.code), formatDocument(ruleDocument(rule), 'markdown')] as const,
    ),
  ]);
}
