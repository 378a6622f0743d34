import { reduceTrial, rememberReductions } from '../../bench/reduce-trial.ts';
import type { Finding } from '../../registry/finding.ts';
import { identityOfPath, type Kind } from '../../registry/kind.ts';
import { type FileWithSiblings, linkFiles } from '../../registry/load-files.ts';
import { pathOfFile, type ReadFile, relativePathOfFile } from '../../registry/registry-file.ts';
import type { ResultMemory } from '../../registry/result-memory.ts';
import { checkRegistry } from '../../rules/engine/check-registry.ts';
import { sha256Of } from '../../text/sha256.ts';
import type { CliContext } from '../cli-context.ts';
import type { CheckedFiles } from './checked-files.ts';
import { misremembered } from './misremembered.ts';
import { reduceInThreads } from './share-work.ts';

/**
 * What the rules find in the wanted files. Where an earlier run has seen the same files on the same day, its findings
 * hold, and nothing is parsed but one trial, another each day, which tells whether what is remembered can be trusted.
 */
export async function recallOrJudge(
  files: CheckedFiles,
  wanted: readonly string[],
  wantsFile: (file: string) => boolean,
  memory: ResultMemory,
  today: string,
  cli: CliContext,
): Promise<readonly Finding[]> {
  let isRemembered = true;
  const question = {
    kind: 'check',
    name: 'check',
    inputs: [today, wanted, [...files.profiles.map(({ file }) => file), ...files.sheets].map(fingerprint)],
    compute: () => {
      isRemembered = false;
      return { findings: judge(files, wantsFile, memory, today), reduced: memory.asked('reduction') };
    },
    isVouchedFor: true,
  } as const;
  if (!memory.knows(question)) {
    await files.parseAhead(cli);
    await reduceInThreads(files.loaded().registry, wantsFile, memory, cli);
  }
  const { findings, reduced } = memory.recall(question);
  if (isRemembered) askForOne(files, reduced, memory, today);
  const wrong = memory.differing(today);
  const sound = isRemembered && wrong.length > 0 ? memory.renew(question).findings : findings;
  return [...sound, ...wrong.map((trial) => misremembered(trial, placeOf(files, trial)))];
}

/** What the rules find in the wanted files, whatever earlier runs have found. */
export function judge(
  files: CheckedFiles,
  wantsFile: (file: string) => boolean,
  memory: ResultMemory,
  today: string,
): Finding[] {
  const loaded = files.loaded();
  rememberReductions(loaded.registry, memory);
  const attachments = loaded.registry.profiles.flatMap(({ source, attachment }) =>
    attachment !== null && wantsFile(source.path) ? [pathOfFile(attachment)] : [],
  );
  // What is wrong in the readings of a wanted trial is wrong with the trial.
  const readings = new Set(attachments);
  return checkRegistry(loaded, { today, wants: wantsFile }).filter(
    ({ file }) => wantsFile(file) || readings.has(file),
  );
}

/** All that a check can see of a file. */
function fingerprint(file: ReadFile): readonly string[] {
  return [pathOfFile(file), relativePathOfFile(file), file.ok ? sha256Of(file.source.text) : file.problem];
}

/** A reduction needs no more of a registry than the trial and its filament. */
function askForOne(
  { profiles }: CheckedFiles,
  reduced: readonly string[],
  memory: ResultMemory,
  today: string,
): void {
  const ranked = reduced.map((id) => ({ id, rank: sha256Of(today + id) }));
  const id = ranked.sort((a, b) => (a.rank < b.rank ? -1 : 1))[0]?.id;
  const trial = profiles.filter((file) => isAbout(file, 'trial', id));
  const filament = linkFiles(trial).registry.trial.get(id ?? '')?.data.filament;
  const { registry } = linkFiles([
    ...trial,
    ...profiles.filter((file) => isAbout(file, 'filament', filament)),
  ]);
  rememberReductions(registry, memory);
  if (id !== undefined) reduceTrial(registry, id);
}

function placeOf({ profiles }: CheckedFiles, trial: string): string {
  const file = profiles.find((each) => isAbout(each, 'trial', trial))?.file;
  return file === undefined ? '' : pathOfFile(file);
}

function isAbout({ file }: FileWithSiblings, kind: Kind, id: string | undefined): boolean {
  const identity = identityOfPath(relativePathOfFile(file));
  return identity?.kind === kind && identity.id === id;
}
