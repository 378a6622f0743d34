import { rememberReductions, trialResults } from '../../bench/reduce-trial.ts';
import type { Finding } from '../../registry/finding.ts';
import { identityOfPath, type Kind } from '../../registry/kind.ts';
import { type FileWithSiblings, linkFiles, parseFile } from '../../registry/load-files.ts';
import { pathOfFile, type ReadFile, relativePathOfFile } from '../../registry/registry-file.ts';
import type { ResultMemory } from '../../registry/result-memory.ts';
import { isObject } from '../../registry/shape.ts';
import type { Judgement } from '../../rules/engine/check-registry.ts';
import { onePerCause } from '../../rules/engine/one-per-cause.ts';
import { sha256Of } from '../../text/sha256.ts';
import type { CliContext } from '../cli-context.ts';
import type { CheckedFiles } from './checked-files.ts';
import { reduceInThreads } from './share-work.ts';

interface Judged extends Judgement {
  /** The trials whose results the rules have asked for. */
  readonly reduced: readonly string[];
}

/**
 * What the rules find in the wanted files. Where an earlier run has seen the same files on the same day, its findings
 * hold, and nothing is parsed but one trial and one file, others each day, which tell whether what is remembered can be
 * trusted.
 */
export async function recallOrJudge(
  files: CheckedFiles,
  wanted: readonly string[],
  wantsFile: (file: string) => boolean,
  memory: ResultMemory,
  today: string,
  cli: CliContext,
): Promise<Judgement> {
  const prints = [...files.profiles.map(({ file }) => file), ...files.sheets].map(fingerprint);
  const asked = { kind: 'check', name: 'check', inputs: [today, wanted, prints] };
  const remembered = judgedOf(memory.lookUp(asked));
  if (remembered !== null) askForOne(files, remembered.reduced, memory, today);
  const distrusted = memory.differing(today);
  const misread = remembered === null ? null : misreadFile(files, wanted, remembered, today);
  if (remembered !== null && distrusted.length === 0 && misread === null) return remembered;
  const judgement = await judgeAnew(files, wantsFile, memory, today, cli, { distrusted, misread });
  // What may rest on a wrong result is not remembered, and what was remembered of it is gone.
  const isDoubtful = judgement.findings.some(({ rule }) => rule === 'evidence/misremembered');
  const judged: Judged | null = isDoubtful ? null : { ...judgement, reduced: memory.recalled('reduction') };
  memory.learn(asked, JSON.stringify(judged));
  return judgement;
}

/** What is known already to be remembered wrongly: trials, and a file. */
interface Distrust {
  readonly distrusted: readonly string[];
  readonly misread: string | null;
}

/** What the rules find in the wanted files, whatever an earlier check has found, and what is remembered wrongly. */
export async function judgeAnew(
  files: CheckedFiles,
  wantsFile: (file: string) => boolean,
  memory: ResultMemory,
  today: string,
  cli: CliContext,
  { distrusted, misread }: Distrust = { distrusted: [], misread: null },
): Promise<Judgement> {
  await files.parseAhead(memory, cli);
  const misparsed = files.misparsed(today);
  const { judge, misremembered, misrememberedFile } = await import('./judge.ts');
  await reduceInThreads(files.loaded().registry, wantsFile, memory, cli);
  const { findings, acknowledged } = judge(files, wantsFile, memory, today);
  const wrong = new Set([...distrusted, ...memory.differing(today)]);
  return {
    findings: [
      ...findings,
      ...[...wrong].map((trial) => misremembered(trial, placeOf(files, trial))),
      ...[...misparsed, ...(misread === null ? [] : [misread])].map(misrememberedFile),
    ],
    acknowledged,
  };
}

/** What was remembered of a check, if it has the form of it: whoever can write an entry can write anything. */
function judgedOf(remembered: unknown): Judged | null {
  if (!isObject(remembered)) return null;
  const { findings, acknowledged, reduced } = remembered;
  return Array.isArray(findings) && Array.isArray(acknowledged) && Array.isArray(reduced)
    ? { findings, acknowledged, reduced }
    : null;
}

/** The wanted file of the day, if what is wrong with its form is not what is remembered of it; else null. */
function misreadFile(
  { profiles }: CheckedFiles,
  wanted: readonly string[],
  { findings }: Judged,
  today: string,
): string | null {
  const path = firstOfDay(wanted, today);
  const file = profiles.find((each) => pathOfFile(each.file) === path);
  if (path === undefined || file === undefined) return null;
  const own = findings.filter((finding) => finding.file === path);
  // Of a file with very many findings only some are shown.
  if (own.some(({ rule }) => rule === 'file/many-findings')) return null;
  const remembered = own.filter(({ rule }) => isAboutForm(rule));
  const parsed = parseFile(file).findings.filter((finding) => finding.file === path);
  const found = onePerCause(parsed.map((finding) => ({ owner: path, blames: [], finding })));
  const isOfOtherKind = own.some(({ rule }) => rule === 'identity/id-path');
  const isKnown = remembered.every((one) => found.some(({ finding }) => tells(one, finding)));
  const isTold = found.every(
    ({ finding }) =>
      remembered.some((one) => tells(one, finding)) || (isOfOtherKind && finding.rule.startsWith('shape/')),
  );
  return isKnown && isTold ? null : path;
}

/** Whether a finding says what another one does; what follows from that may stand behind it, and makes it as serious. */
function tells(told: Finding, finding: Finding): boolean {
  const { message, severity } = finding;
  return (
    told.message.startsWith(message) &&
    JSON.stringify({ ...told, message, severity }) === JSON.stringify(finding)
  );
}

/** Whether reading a file alone shows what a rule is about. */
function isAboutForm(rule: string): boolean {
  return /^(?:file|syntax|shape|units)\//.test(rule);
}

/** One of some names, another each day. */
function firstOfDay(names: readonly string[], today: string): string | undefined {
  const ranked = names.map((name) => ({ name, rank: sha256Of(today + name) }));
  return ranked.sort((a, b) => (a.rank < b.rank ? -1 : 1))[0]?.name;
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
  const id = firstOfDay(reduced, today);
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
