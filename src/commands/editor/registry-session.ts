import { filesOfFolders } from '../../host/load-registry.ts';
import { readRegistryFile } from '../../host/registry-files.ts';
import {
  type FileWithSiblings,
  type LoadedRegistry,
  linkFiles,
  type ParseFile,
  parsingChanges,
} from '../../registry/load-files.ts';
import { fileOfText, pathOfFile } from '../../registry/registry-file.ts';
import type { ResultMemory } from '../../registry/result-memory.ts';
import type { EditorTarget } from './editor-target.ts';

/** An open file of a registry, with its text as it stands in the editor. */
export interface OpenText {
  readonly target: EditorTarget;
  readonly text: string;
}

/** A registry while some of its files are open: only what has changed is read, parsed and reduced again. */
export interface RegistrySession {
  /** The registry with the open texts in the place of the files. */
  readonly load: (open: readonly OpenText[]) => LoadedRegistry;
  /** What was loaded last; null before that. */
  readonly last: () => LoadedRegistry | null;
  /** Has the files read again, since some may have changed. */
  readonly forget: () => void;
  readonly memory: ResultMemory;
}

export function registrySession(
  folders: readonly string[],
  cwd: string,
  memory: ResultMemory,
): RegistrySession {
  const parse: ParseFile = parsingChanges();
  let onDisk: readonly FileWithSiblings[] | null = null;
  let loaded: LoadedRegistry | null = null;
  return {
    load: (open) => {
      onDisk ??= filesOfFolders(folders, [], cwd);
      loaded = linkFiles(overlaid(onDisk, open.map(typedFile)), parse);
      return loaded;
    },
    last: () => loaded,
    forget: () => {
      onDisk = null;
    },
    memory,
  };
}

/** An open text as the file that it will be. */
export function typedFile({ target: { root, relativePath }, text }: OpenText): FileWithSiblings {
  return {
    file: fileOfText(root, relativePath, text),
    readSibling: (sibling) => readRegistryFile(root, sibling),
  };
}

/** The files in their order, since of two with one id the first counts; those that are not saved yet come last. */
function overlaid(
  files: readonly FileWithSiblings[],
  typed: readonly FileWithSiblings[],
): FileWithSiblings[] {
  const byPath = new Map(typed.map((each) => [pathOfFile(each.file), each]));
  const standing = files.map((each) => {
    const path = pathOfFile(each.file);
    const over = byPath.get(path);
    byPath.delete(path);
    return over ?? each;
  });
  return [...standing, ...byPath.values()];
}
