import { rememberReductions, trialResults } from '../../bench/reduce-trial.ts';
import type { Finding } from '../../registry/finding.ts';
import { identityOfPath, type Kind } from '../../registry/kind.ts';
import { type FileWithSiblings, linkFiles } from '../../registry/load-files.ts';
import { pathOfFile, type ReadFile, relativePathOfFile } from '../../registry/registry-file.ts';
import type { ResultMemory } from '../../registry/result-memory.ts';
import { sha256Of } from '../../text/sha256.ts';
import type { CliContext } from '../cli-context.ts';
import type { CheckedFiles } from './checked-files.ts';
import { reduceInThreads } from './share-work.ts';

interface Judged {
  readonly findings: readonly Finding[];
  /** The trials whose results the rules have asked for. */
  readonly reduced: readonly string[];
}

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
  const prints = [...files.profiles.map(({ file }) => file), ...files.sheets].map(fingerprint);
  const asked = { kind: 'check', name: 'check', inputs: [today, wanted, prints] };
  const remembered = memory.lookUp<Judged>(asked);
  if (remembered !== null) askForOne(files, remembered.reduced, memory, today);
  const distrusted = memory.differing(today);
  if (remembered !== null && distrusted.length === 0) return remembered.findings;
  await files.parseAhead(cli);
  const { judge, misremembered } = await import('./judge.ts');
  await reduceInThreads(files.loaded().registry, wantsFile, memory, cli);
  const findings = judge(files, wantsFile, memory, today);
  memory.learn(asked, JSON.stringify({ findings, reduced: memory.recalled('reduction') } satisfies Judged));
  const wrong = new Set([...distrusted, ...memory.differing(today)]);
  return [...findings, ...[...wrong].map((trial) => misremembered(trial, placeOf(files, trial)))];
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
  if (id !== undefined) trialResults(registry, id);
}

function placeOf({ profiles }: CheckedFiles, trial: string): string {
  const file = profiles.find((each) => isAbout(each, 'trial', trial))?.file;
  return file === undefined ? '' : pathOfFile(file);
}

function isAbout({ file }: FileWithSiblings, kind: Kind, id: string | undefined): boolean {
  const identity = identityOfPath(relativePathOfFile(file));
  return identity?.kind === kind && identity.id === id;
}
