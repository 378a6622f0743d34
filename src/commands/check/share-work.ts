import { reductionQuestion } from '../../bench/reduce-trial.ts';
import { referredTrials } from '../../registry/dependants.ts';
import {
  type FileWithSiblings,
  type ParseFile,
  parseFile,
  readingsBeside,
} from '../../registry/load-files.ts';
import type { Profile } from '../../registry/profile.ts';
import { profileOfSound, type SoundProfile } from '../../registry/read-profile.ts';
import type { Registry } from '../../registry/registry.ts';
import type { ResultMemory } from '../../registry/result-memory.ts';
import type { CliContext } from '../cli-context.ts';

/** A thread takes as long to start as this many files to parse, or ladders to reduce. */
const worthIt = { files: 1000, ladders: 40 } as const;

/** A parser that has parsed many files in threads already; undefined where there are too few of them. */
export async function parsedInThreads(
  files: readonly FileWithSiblings[],
  { threads }: CliContext,
): Promise<ParseFile | undefined> {
  const read = files.flatMap(({ file }) => (file.ok ? [file.source] : []));
  if (threads === undefined || read.length < worthIt.files) return undefined;
  const given = await (await threads()).parse(read.map(({ text, relativePath }) => [text, relativePath]));
  const sound = new Map<string, SoundProfile>();
  for (const [index, profile] of given.entries()) {
    const source = read[index];
    if (profile !== null && source !== undefined) sound.set(source.path, profile);
  }
  return (each) => {
    const profile = each.file.ok ? sound.get(each.file.source.path) : undefined;
    return profile === undefined || !each.file.ok
      ? parseFile(each)
      : profileOfSound(each.file.source, profile, readingsBeside(each));
  };
}

/** Reduces in threads what the judgement of the wanted files will ask for, if it is much and not remembered. */
export async function reduceInThreads(
  registry: Registry,
  wantsFile: (file: string) => boolean,
  memory: ResultMemory,
  { threads }: CliContext,
): Promise<void> {
  if (threads === undefined) return;
  const wanted = registry.documents.filter(({ source }) => wantsFile(source.path));
  const trials = wanted.flatMap((document) =>
    document.kind === 'trial' ? [document.id] : referredTrials(document),
  );
  const ids = [...new Set(trials)];
  // To ask the memory costs the reading of every sheet, so that comes after what a glance can tell.
  if (ids.filter((id) => isLadder(registry.trial.get(id))).length < worthIt.ladders) return;
  const questions = ids.flatMap((id) => {
    const question = reductionQuestion(registry, id);
    return question.ok && memory.lookUp(question.value) === null ? [question.value] : [];
  });
  if (questions.filter(({ inputs: [method] }) => method === 'flowLadder').length < worthIt.ladders) return;
  const results = await (await threads()).reduce(questions.map(({ inputs }) => inputs));
  for (const [index, question] of questions.entries()) memory.learn(question, results[index] ?? '');
}

const isLadder = (trial: Profile<'trial'> | undefined) => trial?.data.method === 'flowLadder';
