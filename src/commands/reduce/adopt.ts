import { dirname, relative, resolve, sep } from 'node:path';
import { adoptingKind, adoptLimits } from '../../bench/adopt/adopt-limit.ts';
import { adoptedStatements } from '../../bench/adopt/adopted-statement.ts';
import type { Reduction } from '../../bench/reduction.ts';
import { schemaPathFrom } from '../../host/schema-files.ts';
import { tidyFolders } from '../../host/writing/leftovers.ts';
import { replaceText } from '../../host/writing/replace-text.ts';
import { writeNewFile } from '../../host/writing/write-new-file.ts';
import { addedKeys, additionsTo } from '../../registry/addition.ts';
import { expectedPath } from '../../registry/kind.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import { sourceText } from '../../registry/source-text.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';

/** Where limits may be written: the team's own registry, the last of those that were read. */
interface OwnRegistry {
  /** Absolute path. */
  readonly folder: string;
  readonly cwd: string;
}

/** How often a profile is read anew into which others write at the same time. */
const mostAttempts = 20;

/**
 * Writes the limits of a trial into the profile that states them. The profile of a registry that the own one rests on
 * stays as it is: limits of its filaments go into an addition. Where others write there at the same time, it goes by what
 * they have written, for which `readAnew` reads the registry. Returns a line for the user.
 */
export async function adopt(
  registry: Registry,
  trial: Profile<'trial'>,
  reduction: Reduction,
  own: OwnRegistry,
  readAnew: () => Registry,
): Promise<Result<string, Problem>> {
  let now = registry;
  for (let attempt = 1; ; attempt++) {
    const adopted = await adoptInto(now, trial, reduction, own);
    if (adopted.ok || attempt === mostAttempts) return adopted;
    if (!['changedMeanwhile', 'fileExists'].includes(adopted.error.code)) return adopted;
    now = readAnew();
    const present = now.trial.get(trial.id);
    // The report that the user sees is of other readings.
    if (present === undefined || !isSameTrial(present, trial)) return adopted;
  }
}

function isSameTrial(one: Profile<'trial'>, other: Profile<'trial'>): boolean {
  const textOf = ({ attachment }: Profile<'trial'>) => (attachment?.ok ? attachment.source.text : null);
  return one.source.text === other.source.text && textOf(one) === textOf(other);
}

async function adoptInto(
  registry: Registry,
  trial: Profile<'trial'>,
  reduction: Reduction,
  own: OwnRegistry,
): Promise<Result<string, Problem>> {
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
  if (isOwn(profile.source.path, own)) return write(profile, adoptLimits(profile, trial, reduction), own);
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
  return adoptIntoAddition(registry, profile, trial, reduction, own);
}

function isOwn(path: string, { folder, cwd }: OwnRegistry): boolean {
  return resolve(cwd, path).startsWith(folder + sep);
}

async function write(
  { source }: Pick<Profile<'filament'>, 'source'>,
  text: Result<string, Problem>,
  { cwd }: OwnRegistry,
): Promise<Result<string, Problem>> {
  if (!text.ok) return text;
  if (text.value === source.text) {
    tidyFolders([dirname(resolve(cwd, source.path))]);
    return success(`${source.path} states this limit already.`);
  }
  const written = await replaceText(source.path, { before: source.text, after: text.value }, cwd);
  if (!written.ok) return written;
  return success(`Wrote the limit into ${source.path}.`);
}

/** An addition has the limits of a filament in the same form, so they are written in the same way. */
async function adoptIntoAddition(
  registry: Registry,
  filament: Profile<'filament'>,
  trial: Profile<'trial'>,
  reduction: Reduction,
  own: OwnRegistry,
): Promise<Result<string, Problem>> {
  const present = additionsTo(filament.id, registry.addition).find(({ source }) => isOwn(source.path, own));
  if (present !== undefined) {
    const { source, written, yaml } = present;
    return write(present, adoptLimits({ ...filament, source, written, yaml }, trial, reduction), own);
  }
  const id = filament.id.replaceAll('/', '-');
  const path = expectedPath('addition', id, '');
  const source = sourceText(path, path, beginning(id, filament.id, path, own));
  const text = adoptLimits({ ...filament, source, written: {} }, trial, reduction);
  if (!text.ok) return text;
  const made = await writeNewFile(own.folder, { path, text: text.value });
  if (!made.ok) return made;
  const shown = relative(own.cwd, resolve(own.folder, path)).replaceAll('\\', '/');
  return success(`Wrote the limit into ${shown}, which adds to ${filament.source.path}.`);
}

function beginning(id: string, filament: string, path: string, { folder }: OwnRegistry): string {
  const schema = schemaPathFrom(resolve(folder, path, '..'), folder, 'addition.schema.json');
  return [
    `# yaml-language-server: $schema=${schema}`,
    'kind: addition',
    `id: ${id}`,
    'version: 1.0.0',
    `filament: ${filament}`,
    '',
  ].join('\n');
}
