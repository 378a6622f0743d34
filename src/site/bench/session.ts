import { trialResults } from '../../bench/reduce-trial.ts';
import type { ReduceById } from '../../bench/reducing-once.ts';
import { type LoadedRegistry, loadFiles, parsingChanges } from '../../registry/load-files.ts';
import type { PartFile, RegistryPart } from './registry-part.ts';

/** How the files of a draft are named in their repository. */
export interface BenchPlaces {
  /** Folder of the own registry, from the root of the repository: `profiles`. */
  readonly folder: string;
  /** Path from the root of the own registry to the schemas: `../schema`. */
  readonly schemas: string;
}

/** What the bench knows of a machine and a filament: the part of the registry that is about them. */
export interface BenchSession {
  readonly places: BenchPlaces;
  readonly today: string;
  /** The registry with some files of one's own on top, or in the place of those that are there. */
  readonly withFiles: (files: readonly PartFile[]) => LoadedRegistry;
  /** Reduces trials of the registry, each once. */
  readonly reduceKnown: ReduceById;
}

/** Folder that files of registries below the own one are shown in. */
const below = 'node_modules';

/** Begins a session with the parts that were loaded. */
export function startSession(
  parts: readonly RegistryPart[],
  places: BenchPlaces,
  today: string,
): BenchSession {
  const present = parts.flatMap(({ files }) => files);
  const elsewhere = parts.flatMap((part) => part.elsewhere);
  const parse = parsingChanges();
  const withFiles = (files: readonly PartFile[]): LoadedRegistry => {
    const textsOf = (isOwn: boolean) =>
      new Map(
        [...present, ...files].filter((file) => file.isOwn === isOwn).map(({ path, text }) => [path, text]),
      );
    const loaded = loadFiles(
      [
        { folder: below, texts: textsOf(false) },
        { folder: places.folder, texts: textsOf(true) },
      ],
      parse,
    );
    const { registry } = loaded;
    return { ...loaded, registry: { ...registry, broken: new Set([...registry.broken, ...elsewhere]) } };
  };
  const base = withFiles([]).registry;
  const known = new Map<string, ReturnType<ReduceById>>();
  const reduceKnown: ReduceById = (id) => {
    const reduced = known.get(id) ?? trialResults(base, id);
    known.set(id, reduced);
    return reduced;
  };
  return { places, today, withFiles, reduceKnown };
}

/** Whether a file belongs to the own registry, by its path as sources name it. */
export function isOwnFile({ places }: BenchSession, path: string): boolean {
  return places.folder === '' ? !path.startsWith(`${below}/`) : path.startsWith(`${places.folder}/`);
}
