import { fileRules } from '../../registry/form/file-rule.ts';
import { ladder } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['trial'],
  severity: 'error',
  statement: 'The readings of a trial are either in the trial or in a CSV file beside it.',
  rationale: 'A limit can only be recalculated from one set of readings.',
  source: 'Format of the registry: raw readings accompany every measured limit.',
  example: {
    kind: 'trial',
    bad: `${ladder([8, 12, 16, 18, 20, 22])}
  file: wren-daisy-pla-230.csv`,
    good: ladder([8, 12, 16, 18, 20, 22]),
  },
  *check(profile) {
    const { columns, file } = profile.data.observations;
    if (columns !== undefined && file !== undefined) {
      yield {
        path: ['observations', 'file'],
        part: 'key',
        message: 'The readings are here and in a file, so it is not clear which ones count',
        found: 'columns and file',
        allowed: 'columns with rows, or file',
        help: 'Keep either `columns` and `rows`, or `file`.',
      };
    }
    if (profile.attachment !== null && !profile.attachment.ok) {
      const { message, help } = fileRules[profile.attachment.problem];
      yield {
        path: ['observations', 'file'],
        part: 'value',
        message: `The file of readings ${profile.attachment.path}: ${message.charAt(0).toLowerCase()}${message.slice(1)}`,
        ...(file !== undefined && { found: file }),
        allowed: 'a CSV file that can be read',
        help,
      };
    }
  },
};
