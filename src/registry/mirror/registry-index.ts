import { jsonText } from '../../text/json-text.ts';
import { compareText } from '../finding.ts';
import type { LoadedRegistry } from '../load-files.ts';
import type { AnyProfile } from '../profile.ts';

/** Version of the form of an index, see `schema/output/index.schema.json`. */
export const indexFormat = 'meltbounds-index/1';

/** A file of a registry with the digest by which it is known. */
export interface IndexedFile {
  /** Path from the root of the registry, with `/` between folders. */
  readonly path: string;
  /** SHA-256 of the text with LF line ends and without a byte-order mark. */
  readonly sha256: string;
}

interface IndexedProfile extends IndexedFile {
  readonly kind: string;
  readonly id: string;
  /** Absent for records. */
  readonly version?: string;
  /** The readings of a trial, if they stand in a file beside it. */
  readonly sheet?: IndexedFile;
}

/** The profiles of a registry with their digests, by which a copy can be verified. */
export interface RegistryIndex {
  readonly format: typeof indexFormat;
  readonly profiles: readonly IndexedProfile[];
}

/** The index of a registry without errors of form, sorted by path; the same registry gives the same bytes. */
export function indexRegistry({ registry }: LoadedRegistry): RegistryIndex {
  const profiles = registry.profiles.map(indexedProfile);
  return { format: indexFormat, profiles: profiles.sort((a, b) => compareText(a.path, b.path)) };
}

/** The index as the file that `index --verify` reads. */
export function formatRegistryIndexAsJson(index: RegistryIndex): string {
  return jsonText(index);
}

function indexedProfile({ kind, id, source, data, attachment }: AnyProfile): IndexedProfile {
  return {
    path: source.relativePath,
    sha256: source.digest,
    kind,
    id,
    ...('version' in data && { version: data.version }),
    ...(attachment?.ok && {
      sheet: { path: attachment.source.relativePath, sha256: attachment.source.digest },
    }),
  };
}
