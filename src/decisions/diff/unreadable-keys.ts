import type { Finding } from '../../registry/finding.ts';
import { identityOfPath } from '../../registry/kind.ts';
import type { LoadedRegistry } from '../../registry/load-files.ts';
import { brokenKey } from '../../registry/registry.ts';

/**
 * Documents with errors of form, by kind and id, each with the first error: what such a document says is not certain,
 * so no change of it can be judged.
 */
export function unreadableKeys({ registry, findings }: LoadedRegistry): ReadonlyMap<string, Finding> {
  const keysByPath = new Map(
    registry.documents.map(({ kind, id, source }) => [source.path, brokenKey(kind, id)]),
  );
  const unreadable = new Map<string, Finding>();
  for (const finding of findings) {
    const key = keysByPath.get(finding.file) ?? keyOfPath(finding.file);
    if (finding.severity === 'error' && key !== null && !unreadable.has(key)) unreadable.set(key, finding);
  }
  return unreadable;
}

/** What a path stands for, wherever the registry is. */
function keyOfPath(path: string): string | null {
  const steps = path.split('/');
  for (let start = steps.length - 2; start >= 0; start--) {
    const identity = identityOfPath(steps.slice(start).join('/'));
    if (identity !== null) return brokenKey(identity.kind, identity.id);
  }
  return null;
}
