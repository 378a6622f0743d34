import type { Hit } from '../../registry/hit.ts';
import { expectedPath, identityOfPath, type Kind, kindFolders } from '../../registry/kind.ts';
import type { ReadDocument } from '../../registry/profile.ts';
import { folderOf } from '../../registry/relative-path.ts';
import { isObject } from '../../registry/shape.ts';
import { quote } from '../../text/quote.ts';
import type { DocumentRule } from '../engine/rule.ts';

export const rule: DocumentRule = {
  judges: 'document',
  reach: 'profile',
  severity: 'error',
  statement: 'The path of a file is made from its kind and id.',
  rationale: 'Profiles are found by their id; if path and id differ, one was copied and not changed.',
  source: 'Format of the registry: one document a file, at the path of its id.',
  example: {
    kind: 'job',
    bad: 'id: peg',
    good: 'id: hook',
  },
  *check(document, { today }) {
    const { relativePath } = document.source;
    const year = yearOf(document);
    const wanted = expectedPath(document.kind, document.id, year);
    if (relativePath.replace(/\.yml$/, '.yaml') === wanted) return;
    const byPath = identityOfPath(relativePath);
    if (document.kind === 'trial' && byPath?.kind === 'trial' && byPath.id === document.id) {
      // A year yet to come is the slip itself and has a rule of its own.
      if (year <= today.slice(0, 4)) yield otherYear(document, year, wanted);
      return;
    }
    if (byPath !== null && byPath.kind !== document.kind && byPath.id === document.id) {
      yield otherKind(document, byPath.kind);
      return;
    }
    const fixId = byPath?.kind === document.kind ? `Write \`id: ${byPath.id}\`, or move` : 'Move';
    yield {
      path: ['id'],
      part: 'value',
      message: `The id "${quote(document.id)}" does not fit the path of the file, ${relativePath}`,
      found: quote(document.id),
      allowed: byPath?.kind === document.kind ? byPath.id : quote(wanted),
      help: `${fixId} the file to ${quote(wanted)}.`,
    };
  },
};

function otherKind({ kind }: ReadDocument, byPath: Kind): Hit {
  return {
    path: ['kind'],
    part: 'value',
    message: `The kind is "${kind}", but the file is under ${kindFolders[byPath]}/`,
    found: kind,
    allowed: byPath,
    help: `Write \`kind: ${byPath}\`, or move the file to ${kindFolders[kind]}/; the keys are judged by the kind that stands here.`,
  };
}

function otherYear({ source }: ReadDocument, year: string, wanted: string): Hit {
  const folder = folderOf(source.relativePath);
  return {
    path: ['date'],
    part: 'value',
    blames: [{ path: ['date'] }],
    message: `The date is in ${quote(year)}, but the file is under ${folder}/`,
    found: quote(year),
    allowed: folder.split('/').at(-1) ?? '',
    help: `Correct the date, or move the file to ${quote(wanted)}.`,
  };
}

/** Year of a trial, which is part of its path. */
function yearOf({ written }: ReadDocument): string {
  return isObject(written) && typeof written.date === 'string' ? written.date.slice(0, 4) : 'YEAR';
}
