import { sha256Of } from '../text/sha256.ts';
import { groupedBy } from './grouped-by.ts';
import { isKind } from './kind.ts';
import { type FileWithSiblings, type ParseFile, parseFile, readingsBeside } from './load-files.ts';
import { profileOfSound, type ReadProfile, type SoundProfile } from './read-profile.ts';
import { pathOfFile, relativePathOfFile } from './registry-file.ts';
import { type ResultMemory, sampleOf } from './result-memory.ts';
import { isObject } from './shape.ts';

/** Parsed profiles of earlier runs, by the digest of their text. */
export interface ProfileMemory {
  /** The files that no earlier run has parsed as they are now. */
  readonly unknown: readonly FileWithSiblings[];
  /** A parser that recalls what is remembered, and has the rest parsed. */
  readonly recalling: (parse?: ParseFile) => ParseFile;
  /** Writes down what this run has parsed. */
  readonly keep: () => void;
  /**
   * Parses a few of the remembered files again, others each day; paths of those that come out otherwise. Where there is
   * one, nothing is recalled any longer.
   */
  readonly differing: (today: string) => string[];
}

/** What earlier runs remember of some files. */
export function profileMemory(files: readonly FileWithSiblings[], memory: ResultMemory): ProfileMemory {
  const known = new Map<string, SoundProfile>();
  const digests = new Map(files.flatMap((each) => digestOf(each)));
  const packs = packsOf(files);
  for (const pack of packs)
    for (const [digest, sound] of packOf(memory.lookUp(pack))) known.set(digest, sound);
  const recall = (each: FileWithSiblings) => known.get(digests.get(each) ?? '');
  const recalled = files.filter(recall);
  const learnt = new Set<FileWithSiblings>();
  return {
    unknown: files.filter((each) => recall(each) === undefined),
    recalling:
      (parse = parseFile) =>
      (each) => {
        const sound = recall(each);
        if (sound !== undefined && each.file.ok)
          return profileOfSound(each.file.source, sound, readingsBeside(each));
        const read = parse(each);
        const [digest, fresh] = [digests.get(each), soundProfileOf(read)];
        if (digest === undefined || fresh === null) return read;
        known.set(digest, fresh);
        learnt.add(each);
        return read;
      },
    keep: () => {
      for (const pack of packs.filter((each) => each.files.some((file) => learnt.has(file)))) {
        const entries = pack.files.flatMap((each) => {
          const [digest, sound] = [digests.get(each), recall(each)];
          return digest === undefined || sound === undefined ? [] : [[digest, sound] as const];
        });
        memory.learn(pack, JSON.stringify(Object.fromEntries(entries)));
      }
      learnt.clear();
    },
    differing: (today) => {
      const wrong = sampleOf(recalled, (each) => digests.get(each) ?? '', today).filter(
        (each) => JSON.stringify(recall(each)) !== JSON.stringify(soundProfileOf(parseFile(each))),
      );
      if (wrong.length > 0) known.clear();
      return wrong.map(({ file }) => pathOfFile(file));
    },
  };
}

/** All that parsing makes of a file depends on its text and its place. */
function digestOf(each: FileWithSiblings): (readonly [FileWithSiblings, string])[] {
  if (!each.file.ok) return [];
  const { relativePath, text } = each.file.source;
  return [[each, sha256Of(`${relativePath}\n${text}`)]];
}

/** Files that are remembered in one entry, by the question that it answers. */
interface Pack {
  readonly kind: 'profiles';
  readonly name: string;
  readonly inputs: readonly string[];
  readonly files: readonly FileWithSiblings[];
}

/** Thousands of small entries take longer to find than to parse, and a large one is written again for each change. */
const filesPerPack = 64;

/** The packs of some files, by their paths alone, so that a change of a text leaves every file in its pack. */
function packsOf(files: readonly FileWithSiblings[]): Pack[] {
  // A power of two changes seldom, so that one file more moves no other.
  const count = 2 ** Math.ceil(Math.log2(Math.max(1, files.length / filesPerPack)));
  const pathOf = ({ file }: FileWithSiblings) => relativePathOfFile(file);
  const groups = groupedBy(files, (each) =>
    String(Number.parseInt(sha256Of(pathOf(each)).slice(0, 8), 16) % count),
  );
  return [...groups.values()].map((group) => ({
    kind: 'profiles',
    name: 'profiles',
    inputs: group.map(pathOf),
    files: group,
  }));
}

/** What was remembered of a pack, as far as it has the form of it: whoever can write an entry can write anything. */
function packOf(remembered: unknown): [string, SoundProfile][] {
  if (!isObject(remembered)) return [];
  return Object.entries(remembered).flatMap(([digest, sound]) =>
    isSoundProfile(sound) ? [[digest, sound]] : [],
  );
}

function isSoundProfile(value: unknown): value is SoundProfile & Record<string, unknown> {
  return (
    isObject(value) &&
    isKind(value.kind) &&
    typeof value.id === 'string' &&
    isObject(value.value) &&
    isObject(value.data)
  );
}

/** A profile that can be remembered: nothing is wrong with its form, and JSON writes it as it is. */
function soundProfileOf({ document, profile, findings }: ReadProfile): SoundProfile | null {
  if (document === null || profile === null || findings.length > 0) return null;
  const { kind, id, written: value } = document;
  return isJson(value) && isJson(profile.data) ? { kind, id, value, data: profile.data } : null;
}

/** Whether JSON gives back what it is given: endless numbers and -0 it does not. */
function isJson(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value) && !Object.is(value, -0);
  if (typeof value !== 'object' || value === null) return value !== undefined;
  return Object.values(value).every(isJson);
}
