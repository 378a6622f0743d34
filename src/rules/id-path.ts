import { expectedPath } from '../registry/kind.ts';
import type { ReadDocument } from '../registry/profile.ts';
import { isObject } from '../registry/shape.ts';
import type { DocumentRule } from './rule.ts';

export const idPath: DocumentRule = {
  judges: 'document',
  code: 'identity/id-path',
  severity: 'error',
  statement: 'The path of a file follows from its kind and id.',
  rationale: 'Others find a profile by its id; where path and id differ, one of them is a slip of copying.',
  source: 'Format of the registry: one document a file, at the path of its id.',
  *check(document) {
    const year = yearOf(document);
    const wanted = expectedPath(document.kind, document.id, year);
    const { relativePath } = document.source;
    if (relativePath.replace(/\.yml$/, '.yaml') === wanted) return;
    yield {
      path: ['id'],
      part: 'value',
      message: `The id "${document.id}" does not fit the path of the file`,
      found: relativePath,
      allowed: wanted,
      help: `Move the file to ${wanted}, or correct the id, the kind${document.kind === 'trial' ? ' or the date' : ''}.`,
    };
  },
};

/** Year of a trial, which is part of its path. */
function yearOf({ written }: ReadDocument): string {
  return isObject(written) && typeof written.date === 'string' ? written.date.slice(0, 4) : 'YEAR';
}
