import type { Rule } from '../../rules/engine/rule.ts';
import {
  type Column,
  type Document,
  leftColumns,
  paragraph,
  type Section,
  section,
  table,
} from '../../text/document.ts';
import { link, type Text } from '../../text/inline.ts';
import { counted } from '../../text/words.ts';
import { rulePageName } from './rule-address.ts';

/** Rules by their class. */
type RulesByClass = ReadonlyMap<string, readonly Rule[]>;

/** Rules for people: a section a class, then code, severity and statement in columns. */
export function ruleListDocument(classes: RulesByClass): Document {
  const count = [...classes.values()].flat().length;
  return {
    title: null,
    answer: `${counted(count, 'rule')}. One rule in full: \`meltbounds rules CODE\``,
    blocks: [...classes].map(([name, rules]) => classSection(name, rules, ({ code }) => code)),
  };
}

/** The list of all rules as a page of the documentation, with links to their pages. */
export function ruleIndexDocument(classes: RulesByClass): Document {
  return {
    title: 'Rules',
    blocks: [
      paragraph('Generated from the rules themselves by `npm run generate`; do not edit.'),
      ...[...classes].map(([name, rules]) =>
        classSection(name, rules, ({ code }) => [link(code, rulePageName(code))]),
      ),
    ],
  };
}

const columns: readonly Column[] = leftColumns('rule', 'severity', 'what must hold').map((column, index) => ({
  ...column,
  wraps: index === 2,
}));

function classSection(name: string, rules: readonly Rule[], codeCell: (rule: Rule) => Text): Section {
  const rows = rules.map((rule) => [codeCell(rule), rule.severity, rule.statement]);
  return section(name, [table(columns, rows)]);
}
