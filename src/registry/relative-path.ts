/** Folder of a file in a registry, empty at its root; paths have `/` between folders on every system. */
export function folderOf(path: string): string {
  return path.split('/').slice(0, -1).join('/');
}

/** Path of a file in a folder, which is empty for the root. */
export function pathIn(folder: string, name: string): string {
  return [folder, name].filter((part) => part !== '').join('/');
}

/** Path of a file that stands beside another one. */
export function pathOfSibling(path: string, name: string): string {
  return pathIn(folderOf(path), name);
}
