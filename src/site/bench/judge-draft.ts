import { adoptedFile } from '../../bench/adopt/adopted-file.ts';
import { trialResults } from '../../bench/reduce-trial.ts';
import { judgeRegistry } from '../../rules/engine/check-registry.ts';
import { problemLine } from '../../text/problem-text.ts';
import { inPrint } from '../../units/in-print.ts';
import type { Draft } from './draft.ts';
import { pathToSchema, trialFiles, trialIn } from './draft-files.ts';
import { sortedRows } from './draft-sheet.ts';
import { rowOfLine } from './reduce-draft.ts';
import type { PartFile } from './registry-part.ts';
import { type BenchSession, isOwnFile } from './session.ts';

/** A file that a draft gives. */
export interface DraftFile {
  readonly what: 'trial' | 'sheet' | 'statement' | 'addition';
  /** Path from the root of the repository. */
  readonly path: string;
  readonly text: string;
  readonly isNew: boolean;
}

/** What `check` would say of the files of a draft. */
export interface JudgedDraft {
  readonly files: readonly DraftFile[];
  /** Why no profile states the limit; null where one does. */
  readonly unstated: string | null;
  readonly findings: readonly DraftFinding[];
}

interface DraftFinding {
  readonly severity: 'error' | 'warning' | 'note';
  readonly text: string;
  readonly rule: string;
  readonly path: string;
  /** Name of the row that it is about; null where it is about none. */
  readonly row: string | null;
}

/** The files of a draft, and what `check` would say of them as far as this machine and this filament show it. */
export function judgeDraft(session: BenchSession, draft: Draft): JudgedDraft {
  const own = trialFiles(session, draft);
  const hasReadings = sortedRows(draft).complete.length > 0;
  const trialAndSheet = hasReadings ? [own.trial, own.sheet] : [own.trial];
  const stated = hasReadings ? statedFile(session, own) : null;
  const statement = stated?.file ?? null;
  const written = statement === null ? trialAndSheet : [...trialAndSheet, statement.file];
  const shown = (path: string) => (session.places.folder === '' ? path : `${session.places.folder}/${path}`);
  const paths = new Set(written.map(({ path }) => shown(path)));
  const loaded = session.withFiles(written);
  const trial = trialIn(loaded.registry, own);
  const findings = judgeRegistry(loaded, {
    today: session.today,
    wants: (path) => paths.has(path),
    reduce: (registry, id) => (id === trial?.id ? trialResults(registry, id) : session.reduceKnown(id)),
  });
  const files: DraftFile[] = [
    { what: 'trial', path: shown(own.trial.path), text: own.trial.text, isNew: true },
    ...(hasReadings
      ? [{ what: 'sheet' as const, path: shown(own.sheet.path), text: own.sheet.text, isNew: true }]
      : []),
    ...(statement === null
      ? []
      : [{ ...statement, path: shown(statement.file.path), text: statement.file.text }].map(
          ({ what, path, text, isNew }) => ({ what, path, text, isNew }),
        )),
  ];
  return {
    files,
    unstated: stated?.problem ?? null,
    findings: findings.findings.map(({ severity, message, help, rule, file, line }) => ({
      severity,
      text: inPrint(problemLine({ message, help: help ?? '' })),
      rule,
      path: file,
      row: file === shown(own.sheet.path) ? rowOfLine(own.rows, line) : null,
    })),
  };
}

interface StatedFile {
  readonly what: 'statement' | 'addition';
  readonly file: PartFile;
  readonly isNew: boolean;
}

/** The profile or the addition that states the limit, or why there is none. */
function statedFile(
  session: BenchSession,
  own: ReturnType<typeof trialFiles>,
): { readonly file: StatedFile | null; readonly problem: string | null } | null {
  const { registry } = session.withFiles([own.trial, own.sheet]);
  const trial = trialIn(registry, own);
  const reduced = trial === undefined ? null : trialResults(registry, trial.id);
  if (trial === undefined || !reduced?.ok) return null;
  const adopted = adoptedFile(registry, trial, reduced.value, {
    isOwn: (path) => isOwnFile(session, path),
    schemaFrom: (path) => pathToSchema(path, session.places.schemas, 'addition'),
  });
  if (!adopted.ok) return { file: null, problem: inPrint(problemLine(adopted.error)) };
  const file = adopted.value;
  return {
    problem: null,
    file:
      file.change === 'added'
        ? { what: 'addition', file: { path: file.path, text: file.text, isOwn: true }, isNew: true }
        : {
            what: file.source.relativePath.startsWith('additions/') ? 'addition' : 'statement',
            file: { path: file.source.relativePath, text: file.text, isOwn: true },
            isNew: false,
          },
  };
}
