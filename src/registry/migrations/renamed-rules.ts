/**
 * Codes of rules that have changed, with the codes of today; `npm run rename-rule` adds to them. An old code is never
 * used again for another rule.
 */
export const renamedRules: Readonly<Record<string, string>> = {
  'consistency/chamber': 'consistency/chamber-contradiction',
  'consistency/name': 'consistency/name-material',
  'consistency/spool-nowhere': 'consistency/spool-fits-nowhere',
  'consistency/strand-mismatch': 'consistency/filament-diameter-mismatch',
  'evidence/above-siblings': 'evidence/above-similar-trials',
  'evidence/below-siblings': 'evidence/below-similar-trials',
  'evidence/far-below': 'evidence/far-below-interval',
  'plausibility/share-above-whole': 'plausibility/fraction-above-one',
  'plausibility/strand-diameter': 'plausibility/filament-diameter',
  'plausibility/strand-feed': 'plausibility/filament-feed',
};

/** The code of today of a rule that was called otherwise; null for any other text. */
export function presentCode(code: string): string | null {
  return Object.hasOwn(renamedRules, code) ? (renamedRules[code] ?? null) : null;
}
