import type { Kind } from '../../src/registry/kind.ts';

/** What stands in a new rule until somebody replaces it; the tests of the rules show each place. */
export const blankMark = 'FILL IN';

/** The form of the code of a rule: `CLASS/NAME`. */
export const codePattern = /^[a-z]+\/[a-z]+(?:-[a-z]+)*$/;

/** The files that a new rule needs and that nobody can generate, by their paths from the root. */
export function newRuleFiles(code: string, kind: Kind): ReadonlyMap<string, string> {
  return new Map([
    [`src/rules/${code}.ts`, ruleText(kind)],
    [`.changeset/rule-${code.replace('/', '-')}.md`, changesetText(code)],
  ]);
}

/** It finds nothing yet, so that the test of its example fails until it does. */
function ruleText(kind: Kind): string {
  return `import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'${kind}'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['${kind}'],
  severity: 'warning',
  statement: '${blankMark}: what must hold, in one line.',
  rationale: '${blankMark}: what goes wrong where it does not hold.',
  source: '${blankMark}: who says so; or "Common practice, no source."',
  example: {
    kind: '${kind}',
    bad: \`
notice: ${blankMark} - keys that replace those of the sample ${kind} and raise this finding alone\`,
    good: \`
notice: ${blankMark} - the same keys, put right\`,
  },
  *check(profile) {
    if (profile.id !== '${blankMark}: what is wrong') return;
    yield {
      path: ['id'],
      part: 'value',
      message: '${blankMark}: what was found and why that is wrong, without a full stop',
      found: profile.id,
      allowed: '${blankMark}: what would do',
      help: '${blankMark}: what to do about it.',
    };
  },
};
`;
}

function changesetText(code: string): string {
  return `---
"meltbounds": minor
---

Rules: new \`${code}\`: ${blankMark}, what it finds.
`;
}
