import { alike } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'machine' | 'trial'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['machine', 'trial'],
  severity: 'error',
  statement: 'The field notes of a machine or of a trial concern that machine.',
  rationale: 'A note about another machine is shown where nobody needs it, and never where somebody does.',
  source: 'Format of the registry: a note stands with what it is about.',
  example: alike(
    'machine',
    { bad: 'machine: plumstead/wren, aboveFlow', good: 'aboveFlow' },
    (concerns) => `
id: plumstead/robin
name: Wren Tall
fieldNotes:
  - date: '2026-04-02'
    what: Spool rubs on the holder
    effect: The feed stutters
    concerns: {${concerns}: 38 mm3/s}`,
    { copied: true },
  ),
  *check({ kind, id, data }) {
    const own = data.kind === 'trial' ? data.machine : id;
    for (const [index, { concerns }] of (data.fieldNotes ?? []).entries()) {
      const named = concerns?.machine;
      if (named === undefined || named === own) continue;
      yield {
        path: ['fieldNotes', index, 'concerns', 'machine'],
        part: 'value',
        message: `The note concerns the machine ${named}, but it stands in the ${kind} ${id}`,
        found: named,
        ...(own !== undefined && { allowed: own }),
        help: `Leave \`machine\` out, or move the note to ${named}.`,
      };
    }
  },
};
