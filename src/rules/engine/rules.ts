import { ruleFiles } from '../generated/rule-files.ts';
import type { Rule } from './rule.ts';

/** Every rule that judges what the schema has accepted, in the order of their codes. */
export const rules: readonly Rule[] = Object.entries(ruleFiles).map(([code, rule]) => ({ code, ...rule }));
