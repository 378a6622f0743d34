import type { ResultStore } from '../src/registry/result-store.ts';

/** A store of results in memory, with its entries in the open. */
export function mapStore(): ResultStore & { readonly entries: Map<string, string> } {
  const entries = new Map<string, string>();
  return {
    entries,
    get: (key) => entries.get(key) ?? null,
    put: (key, entry) => void entries.set(key, entry),
  };
}
