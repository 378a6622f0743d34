import { groupedBy } from '../../registry/grouped-by.ts';
import { type RuleCode, ruleFiles } from '../generated/rule-files.ts';
import type { Coded, DocumentRule, ProfileRule, Rule, RuleFile } from './rule.ts';

/** Every code that a finding can carry, with what the documentation says about it, in the order of the codes. */
export const rules: readonly Rule[] = Object.entries(ruleFiles).map(([code, rule]) => coded(code, rule));

/** The rules that judge what could be read: their findings can be acknowledged. */
export const judgingRules: readonly Coded<DocumentRule | ProfileRule>[] = rules.filter(
  (rule) => rule.judges === 'document' || rule.judges === 'profile',
);

/** The rule of a code. */
export function ruleOf(code: RuleCode): Rule {
  return coded(code, ruleFiles[code]);
}

/** The rules of each class, the part of a code before its stroke. */
export function rulesByClass(): ReadonlyMap<string, readonly Rule[]> {
  return groupedBy(rules, ({ code }) => code.split('/')[0] ?? code);
}

/** An example may begin and end with a line break, which stands for the layout of the rule's file. */
function coded(code: string, rule: RuleFile): Rule {
  const { example } = rule;
  if (example === undefined) return { ...rule, code };
  return { ...rule, code, example: { ...example, bad: example.bad.trim(), good: example.good.trim() } };
}
