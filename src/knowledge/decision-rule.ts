import { findProfile, type UnknownProfile } from '../registry/find-profile.ts';
import type { Policy } from '../registry/generated/documents.ts';
import { idsOf, type Registry } from '../registry/registry.ts';
import { type Result, success } from '../result.ts';

/** By which rule a measured value is compared with what is claimed, in the terms of JCGM 106:2012. */
export type DecisionRule = NonNullable<Policy['decisionRule']>;

/** The rule where no policy states one: the one that calls fewer claims held. */
const usualRule: DecisionRule = 'guardedAcceptance';

/** A set temperature that is this much off, in K, still stands for the one that a claim names (common practice, no source). */
export const sameTemperature = 5;

/** A rule, and whose it is. */
export interface ChosenRule {
  readonly rule: DecisionRule;
  /** Policy that was asked; null where none was named and the registry has none or several. */
  readonly policy: string | null;
  /** Whether the policy states the rule; it is the usual one otherwise. */
  readonly isStated: boolean;
}

/** What is known of a rule. */
const ruleFacts: Readonly<Record<DecisionRule, { readonly name: string; readonly source: string }>> = {
  guardedAcceptance: { name: 'guarded acceptance', source: 'JCGM 106:2012, 8.3' },
  simpleAcceptance: { name: 'simple acceptance', source: 'JCGM 106:2012, 8.2' },
};

/** The rule of the named policy, else of the only one of the registry, else the usual one. */
export function chooseRule(
  registry: Registry,
  asked: string | undefined,
): Result<ChosenRule, UnknownProfile<'policy'>> {
  const [first, ...others] = idsOf(registry, 'policy');
  const id = asked ?? (others.length === 0 ? first : undefined);
  if (id === undefined) return success({ rule: usualRule, policy: null, isStated: false });
  const policy = findProfile(registry, 'policy', id);
  if (!policy.ok) return policy;
  const { decisionRule } = policy.value.data;
  return success({ rule: decisionRule ?? usualRule, policy: id, isStated: decisionRule !== undefined });
}

/** `Decision rule: guarded acceptance (JCGM 106:2012, 8.3), stated by policy workshop`. */
export function chosenRuleText({ rule, policy, isStated }: ChosenRule): string {
  const { name, source } = ruleFacts[rule];
  const whose =
    policy === null
      ? 'the default, since no policy was named'
      : isStated
        ? `stated by policy ${policy}`
        : `the default, since policy ${policy} states none`;
  return `Decision rule: ${name} (${source}), ${whose}`;
}

/** A rule for programs. */
export function decisionFacts({ rule, policy, isStated }: ChosenRule): Record<string, unknown> {
  return { decisionRule: rule, decision: { source: ruleFacts[rule].source, policy, isStated } };
}
