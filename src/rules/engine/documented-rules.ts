import { acknowledgementRules } from './acknowledgement-rules.ts';
import { formRules } from './form-rules.ts';
import type { ReadingRuleText } from './rule.ts';
import { rules } from './rules.ts';

/** Every code that a finding can carry, with what the documentation says about it. */
export const documentedRules: readonly ReadingRuleText[] = [
  ...formRules,
  ...rules,
  ...Object.values(acknowledgementRules),
];

/** The rules of each class, the part of a code before its stroke; classes in the order in which they first appear. */
export function rulesByClass(): ReadonlyMap<string, readonly ReadingRuleText[]> {
  const classes = new Map<string, ReadingRuleText[]>();
  for (const rule of documentedRules) {
    const name = rule.code.split('/')[0] ?? rule.code;
    const members = classes.get(name) ?? [];
    members.push(rule);
    classes.set(name, members);
  }
  return classes;
}
