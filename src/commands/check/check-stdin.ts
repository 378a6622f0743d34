import { relative, resolve, sep } from 'node:path';
import { filesOfFolders, rootOf } from '../../host/load-registry.ts';
import { readRegistryFile } from '../../host/registry-files.ts';
import { registryFolders } from '../../host/registry-folders.ts';
import { expectedPath } from '../../registry/kind.ts';
import { readProfile } from '../../registry/read-profile.ts';
import { fileOfBytes, pathOfFile, type ReadFile } from '../../registry/registry-file.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import { usage } from '../usage.ts';
import { type AskedCheck, checkedFiles } from './checked-files.ts';

/**
 * A check of one profile that comes on standard input, an unsaved one of an editor for instance, in the place of the file
 * that it would be. Without a path it stands where its kind and id put it. Problems: no registry, no place.
 */
export function stdinCheck(
  bytes: Uint8Array,
  { registry, stdinPath }: { readonly registry: readonly string[]; readonly stdinPath?: string },
  cwd: string,
): Result<AskedCheck, Problem> {
  const folders = registryFolders(registry, cwd);
  if (!folders.ok) return folders;
  const own = folders.value.at(-1) ?? cwd;
  const path = stdinPath === undefined ? ownPath(bytes, own) : success(resolve(cwd, stdinPath));
  if (!path.ok) return path;
  const folder = folders.value.find((candidate) => path.value.startsWith(candidate + sep));
  if (folder === undefined) {
    return usage(
      `--stdin-path ${stdinPath} is not in the registry ${own}`,
      'Write the path that the profile has or will have there.',
    );
  }
  const root = rootOf(folder, cwd);
  const typed = fileOfBytes(root, relative(folder, path.value).replaceAll('\\', '/'), bytes);
  const isOther = (file: ReadFile) => pathOfFile(file) !== pathOfFile(typed);
  return success({
    target: { folders: folders.value, loose: [], only: [path.value] },
    read: (parse) =>
      checkedFiles(
        [
          ...filesOfFolders(folders.value, [], cwd).filter(({ file }) => isOther(file)),
          { file: typed, readSibling: (sibling) => readRegistryFile(root, sibling) },
        ],
        folders.value,
        cwd,
        parse,
      ),
  });
}

/** Where a profile belongs by its kind and id, and a trial by its date. */
function ownPath(bytes: Uint8Array, folder: string): Result<string, Problem<'unreadable' | 'noPlace'>> {
  const nowhere = { folder, shown: '-' };
  const missing = (path: string): ReadFile => ({ ok: false, path, relativePath: path, problem: 'missing' });
  const { document, identity, profile, findings } = readProfile(fileOfBytes(nowhere, '-', bytes), missing);
  const [unread] = findings;
  if (document === null && unread !== undefined && !unread.rule.startsWith('shape/')) {
    return refusal(
      'unreadable',
      `What came on standard input cannot be read, line ${unread.line}: ${unread.message}`,
      'Fix that, or name its place with --stdin-path to have all of it checked.',
    );
  }
  if (identity === null || identity.id === '') {
    return refusal(
      'noPlace',
      'What came on standard input does not say its kind and id',
      'Name its place with --stdin-path, for instance --stdin-path profiles/filaments/maker/name.yaml.',
    );
  }
  const year = profile?.kind === 'trial' ? profile.data.date.slice(0, 4) : 'unknown';
  return success(resolve(folder, expectedPath(identity.kind, identity.id, year)));
}
