import { sheetsOfFolder } from '../../host/load-registry.ts';
import {
  type FileWithSiblings,
  type LoadedRegistry,
  linkFiles,
  type ParseFile,
  textOf,
} from '../../registry/load-files.ts';
import type { ReadFile } from '../../registry/registry-file.ts';
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
  /** Parses what there is in threads, where that is faster; for those who will ask for it. */
  readonly parseAhead: (cli: CliContext) => Promise<void>;
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
  return {
    profiles,
    sheets: folders.flatMap((folder) => sheetsOfFolder(folder, cwd)),
    loaded: () => {
      loaded ??= linkFiles(profiles, ahead);
      return loaded;
    },
    parseAhead: async (cli) => {
      ahead ??= await parsedInThreads(profiles, cli);
    },
  };
}

/** Every text by its path, for showing the line of a finding. */
export function textsOf({ profiles, sheets }: CheckedFiles): ReadonlyMap<string, string> {
  return new Map([...profiles.map(({ file }) => file), ...sheets].flatMap(textOf));
}
