import { sheetsOfFolder } from '../../host/load-registry.ts';
import {
  type FileWithSiblings,
  type LoadedRegistry,
  linkFiles,
  type ParseFile,
  textOf,
} from '../../registry/load-files.ts';
import type { ReadFile } from '../../registry/registry-file.ts';
import type { CheckTarget } from './check-target.ts';

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
}

/** Profiles that have been read, with the sheets in the folders of their registries. */
export function checkedFiles(
  profiles: readonly FileWithSiblings[],
  folders: readonly string[],
  cwd: string,
  parse?: ParseFile,
): CheckedFiles {
  let loaded: LoadedRegistry | null = null;
  return {
    profiles,
    sheets: folders.flatMap((folder) => sheetsOfFolder(folder, cwd)),
    loaded: () => {
      loaded ??= linkFiles(profiles, parse);
      return loaded;
    },
  };
}

/** Every text by its path, for showing the line of a finding. */
export function textsOf({ profiles, sheets }: CheckedFiles): ReadonlyMap<string, string> {
  return new Map([...profiles.map(({ file }) => file), ...sheets].flatMap(textOf));
}
