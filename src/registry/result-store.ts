/**
 * Keeps results between runs, by the digest of everything that went into them: a folder, a cache of a CI system or a store
 * of objects that many machines share. It may lose entries at any time, and what it gives is never trusted unread.
 */
export interface ResultStore {
  readonly get: (key: string) => string | null;
  readonly put: (key: string, entry: string) => void;
}
