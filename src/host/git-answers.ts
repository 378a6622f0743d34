/** A file in a commit. */
export interface TreeEntry {
  readonly isLink: boolean;
  /** Id of its content. */
  readonly object: string;
  /** Bytes. */
  readonly size: number;
  /** Path from the folder that was asked about, with `/` between folders. */
  readonly path: string;
}

/** What `git ls-tree -r -z -l` lists below a folder; `within` is its path in the repository, empty for the top. */
export function treeEntries(listing: string, within: string): TreeEntry[] {
  const prefix = within === '' ? '' : `${within}/`;
  return listing.split('\0').flatMap((line) => {
    const entry = entryOf(line);
    const path = entry?.path.startsWith(prefix) ? entry.path.slice(prefix.length) : '';
    return entry === null || path === '' ? [] : [{ ...entry, path }];
  });
}

/** `100644 blob 3b18e5…    1234\tmachines/maker/model.yaml`; a submodule is no file. */
function entryOf(line: string): TreeEntry | null {
  const [, mode = '', object = '', size = '', path = ''] =
    /^([0-7]+) blob ([0-9a-f]{40,64}) +([0-9]+)\t(.+)$/s.exec(line) ?? [];
  return path === '' ? null : { isLink: mode === '120000', object, size: Number(size), path };
}

const header = /^([0-9a-f]{40,64}) blob ([0-9]{1,12})$/;

/** The contents in what `git cat-file --batch` answers, `ID blob SIZE\nBYTES\n…`, by their ids; `ID missing\n` is passed over. */
export function blobsIn(answer: Buffer): ReadonlyMap<string, Uint8Array> {
  const blobs = new Map<string, Uint8Array>();
  for (let start = 0; start < answer.length; ) {
    const end = answer.indexOf('\n', start);
    if (end < 0) break;
    const [, object, size] = header.exec(answer.toString('latin1', start, end)) ?? [];
    start = end + 1;
    if (object === undefined) continue;
    const content = answer.subarray(start, start + Number(size));
    // An answer that was cut off holds no whole content.
    if (content.length === Number(size)) blobs.set(object, content);
    start += content.length + 1;
  }
  return blobs;
}
