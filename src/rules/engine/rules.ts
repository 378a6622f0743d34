import { groupedBy } from '../../registry/grouped-by.ts';
import { type Kind, kinds } from '../../registry/kind.ts';
import { type RuleCode, ruleFiles } from '../generated/rule-files.ts';
import type { Coded, DocumentRule, ProfileRule, Rule, RuleFile } from './rule.ts';

/** Every code that a finding can carry, with what the documentation says about it, in the order of the codes. */
export const rules: readonly Rule[] = Object.entries(ruleFiles).map(([code, rule]) => coded(code, rule));

/** The rules that judge any document, whether or not it fits its schema. */
export const documentRules: readonly Coded<DocumentRule>[] = rules.filter(
  (rule) => rule.judges === 'document',
);

const profileRules: readonly Coded<ProfileRule>[] = rules.filter((rule) => rule.judges === 'profile');

/** The rules that judge what could be read: their findings can be acknowledged. */
export const judgingRules: readonly Coded<DocumentRule | ProfileRule>[] = [...documentRules, ...profileRules];

const rulesByKind = new Map(
  kinds.map((kind) => [kind, profileRules.filter((rule) => rule.kinds?.includes(kind) ?? true)] as const),
);

/** The rules that judge profiles of a kind. */
export function rulesOfKind(kind: Kind): readonly Coded<ProfileRule>[] {
  return rulesByKind.get(kind) ?? [];
}

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
