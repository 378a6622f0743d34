import { sheetsOfFolder } from '../../host/load-registry.ts';
import {
  type FileWithSiblings,
  type LoadedRegistry,
  linkFiles,
  type ParseFile,
  textOf,
} from '../../registry/load-files.ts';
import { type ProfileMemory, profileMemory } from '../../registry/profile-memory.ts';
import type { ReadFile } from '../../registry/registry-file.ts';
import type { ResultMemory } from '../../registry/result-memory.ts';
import type { CliContext } from '../cli-context.ts';
import type { CheckTarget } from './check-target.ts';
import { parsedInThreads } from './share-work.ts';

/** What was asked for, and how it is read. */
export interface AskedCheck {
  readonly target: CheckTarget;
  readonly read: (parse?: ParseFile) => CheckedFiles;
}

/** What a check has read. */
export interface CheckedFiles {
  readonly profiles: readonly FileWithSiblings[];
  /** The files of readings that trials may name. */
  readonly sheets: readonly ReadFile[];
  /** All of it parsed and linked, when it is first asked for. */
  readonly loaded: () => LoadedRegistry;
  /** Recalls what earlier runs have parsed, and parses the rest in threads where that is faster. */
  readonly parseAhead: (memory: ResultMemory, cli: CliContext) => Promise<void>;
  /** Paths of files that are remembered otherwise than they are parsed now, of a few of them; then all are parsed. */
  readonly misparsed: (today: string) => readonly string[];
}

/** Profiles that have been read, with the sheets in the folders of their registries. */
export function checkedFiles(
  profiles: readonly FileWithSiblings[],
  folders: readonly string[],
  cwd: string,
  parse?: ParseFile,
): CheckedFiles {
  let loaded: LoadedRegistry | null = null;
  let ahead = parse;
  let remembered: ProfileMemory | null = null;
  return {
    profiles,
    sheets: folders.flatMap((folder) => sheetsOfFolder(folder, cwd)),
    loaded: () => {
      if (loaded !== null) return loaded;
      loaded = linkFiles(profiles, ahead);
      remembered?.keep();
      return loaded;
    },
    parseAhead: async (memory, cli) => {
      if (ahead !== undefined || loaded !== null) return;
      remembered = memory.isKept ? profileMemory(profiles, memory) : null;
      const parsed = await parsedInThreads(remembered?.unknown ?? profiles, cli);
      ahead = remembered?.recalling(parsed) ?? parsed;
    },
    misparsed: (today) => {
      const wrong = remembered?.differing(today) ?? [];
      if (wrong.length > 0) loaded = null;
      return wrong;
    },
  };
}

/** Every text by its path, for showing the line of a finding. */
export function textsOf({ profiles, sheets }: CheckedFiles): ReadonlyMap<string, string> {
  return new Map([...profiles.map(({ file }) => file), ...sheets].flatMap(textOf));
}
