import { addedKeys, additionsTo } from '../../registry/addition.ts';
import { expectedPath } from '../../registry/kind.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import { type SourceText, sourceText } from '../../registry/source-text.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import type { TrialResults } from '../reduction.ts';
import { adoptingKind, adoptLimits } from './adopt-limit.ts';
import { adoptedStatements } from './adopted-statement.ts';

/** Where a team may write: its own registry, and not those that it rests on. */
interface OwnFiles {
  /** Whether a file belongs to the own registry, by its path as sources name it. */
  readonly isOwn: (path: string) => boolean;
  /** Path from a file of the own registry, which is named from its root, to the schema of additions. */
  readonly schemaFrom: (path: string) => string;
}

/** The file that states the limits of a trial once they are adopted. */
type AdoptedFile =
  /** One that is there, with its text. */
  | { readonly change: 'edited'; readonly source: SourceText; readonly text: string }
  /** A new addition: its path from the root of the own registry, and the file that it adds to. */
  | { readonly change: 'added'; readonly path: string; readonly text: string; readonly to: string };

/**
 * What adopting the limits of a trial writes. The profile of a registry that the own one rests on stays as it is: limits of
 * its filaments go into an addition. Problems: no profile states what the method finds, or none that may be written.
 */
export function adoptedFile(
  registry: Registry,
  trial: Profile<'trial'>,
  reduction: TrialResults,
  own: OwnFiles,
): Result<AdoptedFile, Problem> {
  const kind = adoptingKind(reduction);
  if (kind === null) {
    return refusal(
      'notStated',
      `No profile states what a ${reduction.method} finds`,
      'Cite it in a field note.',
    );
  }
  const profile =
    kind === 'filament'
      ? registry.filament.get(trial.data.filament)
      : registry.machine.get(trial.data.machine ?? '');
  if (profile === undefined) {
    return refusal(
      'noProfile',
      `The trial has no ${kind} to adopt a limit for`,
      `Name the ${kind} in the trial.`,
    );
  }
  if (own.isOwn(profile.source.path)) return edited(profile, adoptLimits(profile, trial, reduction));
  const foreign = `${profile.source.path} belongs to a registry that yours rests on, and stays as it is`;
  if (profile.kind === 'machine') return refusal('otherRegistry', foreign, 'Propose the limit there.');
  const statable = adoptedStatements(trial, reduction, 'filament');
  const refused = statable.find(({ property }) => !addedKeys.some((key) => key === property));
  if (refused !== undefined) {
    return refusal(
      'otherRegistry',
      `${foreign}. An addition may hold ${addedKeys.join(', ')}, but not ${refused.property}`,
      'Propose it there.',
    );
  }
  return adoptedAddition(registry, profile, trial, reduction, own);
}

function edited(
  { source }: Pick<Profile<'filament'>, 'source'>,
  text: Result<string, Problem>,
): Result<AdoptedFile, Problem> {
  return text.ok ? success({ change: 'edited', source, text: text.value }) : text;
}

/** An addition has the limits of a filament in the same form, so they are written in the same way. */
function adoptedAddition(
  registry: Registry,
  filament: Profile<'filament'>,
  trial: Profile<'trial'>,
  reduction: TrialResults,
  own: OwnFiles,
): Result<AdoptedFile, Problem> {
  const present = additionsTo(filament.id, registry.addition).find(({ source }) => own.isOwn(source.path));
  if (present !== undefined) {
    const { source, written, yaml } = present;
    return edited(present, adoptLimits({ ...filament, source, written, yaml }, trial, reduction));
  }
  const id = filament.id.replaceAll('/', '-');
  const path = expectedPath('addition', id, '');
  const source = sourceText(path, path, beginning(id, filament.id, own.schemaFrom(path)));
  const text = adoptLimits({ ...filament, source, written: {} }, trial, reduction);
  if (!text.ok) return text;
  return success({ change: 'added', path, text: text.value, to: filament.source.path });
}

function beginning(id: string, filament: string, schema: string): string {
  return [
    `# yaml-language-server: $schema=${schema}`,
    'kind: addition',
    `id: ${id}`,
    'version: 1.0.0',
    `filament: ${filament}`,
    '',
  ].join('\n');
}
