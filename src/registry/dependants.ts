import { shapes } from './generated/shapes.ts';
import type { Kind } from './kind.ts';
import type { ReadDocument } from './profile.ts';
import { brokenKey, type Registry } from './registry.ts';
import { leavesOf } from './shape.ts';

/** What has changed in a registry. */
interface Change {
  /** Whether the file at a path, as sources name it, has changed. */
  readonly isChanged: (path: string) => boolean;
  /** What the changed files stand for by their paths: deleted ones are known by nothing else. */
  readonly identities: readonly { readonly kind: Kind; readonly id: string }[];
}

/**
 * Paths of the documents that a change may affect: those that have changed, and those that refer to one of them,
 * directly or over others. A limit depends on the trial that it cites, the trial on its filament and machine.
 */
export function affectedPaths(registry: Registry, { isChanged, identities }: Change): ReadonlySet<string> {
  const attachments = new Map(
    registry.profiles.map(({ source, attachment }) => [
      source.path,
      attachment === null ? null : attachment.ok ? attachment.source.path : attachment.path,
    ]),
  );
  const changed = registry.documents.filter(({ source }) => {
    const attachment = attachments.get(source.path) ?? null;
    return isChanged(source.path) || (attachment !== null && isChanged(attachment));
  });
  const affected = withDependants(registry.documents, [...changed, ...identities].map(keyOf));
  return new Set(
    registry.documents.filter((document) => affected.has(keyOf(document))).map(({ source }) => source.path),
  );
}

function withDependants(documents: readonly ReadDocument[], first: readonly string[]): ReadonlySet<string> {
  const dependants = new Map<string, string[]>();
  for (const document of documents) {
    for (const key of referencesOf(document)) {
      const known = dependants.get(key);
      if (known === undefined) dependants.set(key, [keyOf(document)]);
      else known.push(keyOf(document));
    }
  }
  const affected = new Set(first);
  // A set is walked in the order in which its members were added, those added on the way too.
  for (const key of affected) for (const dependant of dependants.get(key) ?? []) affected.add(dependant);
  return affected;
}

/** Ids of the trials that a document refers to. */
export function referredTrials({ kind, written }: ReadDocument): string[] {
  return leavesOf('reference', shapes[kind], written).flatMap(({ shape, value }) =>
    shape.to === 'trial' && typeof value === 'string' ? [value] : [],
  );
}

function* referencesOf({ kind, written }: ReadDocument): Generator<string> {
  for (const { shape, value } of leavesOf('reference', shapes[kind], written)) {
    // A nozzle belongs to a machine that is named beside it.
    if (shape.to !== 'nozzle' && typeof value === 'string') yield brokenKey(shape.to, value);
  }
}

function keyOf({ kind, id }: { readonly kind: Kind; readonly id: string }): string {
  return brokenKey(kind, id);
}
