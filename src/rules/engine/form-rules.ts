import { fileRuleTexts } from './file-rules.ts';
import type { ReadingRuleText } from './rule.ts';
import { shapeRuleTexts } from './shape-rules.ts';
import { unitsRuleTexts } from './units-rules.ts';

/** What the documentation says about the codes that reading emits: files, syntax, shape, units. */
export const formRules: readonly ReadingRuleText[] = Object.entries({
  ...fileRuleTexts,
  ...shapeRuleTexts,
  ...unitsRuleTexts,
}).map(([code, text]) => ({ code, severity: 'error', ...text }));
