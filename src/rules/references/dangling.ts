import { shapes } from '../../registry/generated/shapes.ts';
import type { Hit } from '../../registry/hit.ts';
import { identityOfPath, type Kind, kindFolders } from '../../registry/kind.ts';
import { nozzleIds } from '../../registry/nozzle.ts';
import type { ReadDocument } from '../../registry/profile.ts';
import { brokenKey, exists, idsOf, oncePerRegistry, type Registry } from '../../registry/registry.ts';
import {
  isObject,
  type Leaf,
  leavesOf,
  type Path,
  type ReferenceTarget,
  type Shape,
} from '../../registry/shape.ts';
import { nearestWord } from '../../text/nearest-word.ts';
import { quote } from '../../text/quote.ts';
import type { DocumentRule } from '../engine/rule.ts';

type ReferenceLeaf = Leaf<Extract<Shape, { type: 'reference' }>>;

export const rule: DocumentRule = {
  judges: 'document',
  reach: 'registry',
  severity: 'error',
  statement: 'Everything that a document refers to is in the registry.',
  rationale: 'If the trial or the source of a limit cannot be found, nobody can check it.',
  source: 'Format of the registry: references are ids of documents.',
  example: {
    kind: 'filament',
    bad: 'sheet: oakhollow-clover-petg-shet',
    good: 'sheet: oakhollow-clover-petg-sheet',
  },
  *check(document, { registry }) {
    for (const leaf of leavesOf('reference', shapes[document.kind], document.written)) {
      const hit =
        leaf.shape.to === 'nozzle' ? nozzleHit(document, registry, leaf) : documentHit(registry, leaf);
      if (hit !== null) yield hit;
    }
  },
};

function documentHit(registry: Registry, leaf: ReferenceLeaf): Hit | null {
  const kind = leaf.shape.to;
  if (kind === 'nozzle' || typeof leaf.value !== 'string') return null;
  if (exists(registry, kind, leaf.value) || standsAtPath(registry, kind, leaf.value)) return null;
  const folder = `${kindFolders[kind]}/`;
  return dangling(
    leaf.path,
    kind,
    leaf.value,
    idsOf(registry, kind),
    `Add it under ${folder}, or correct the id.`,
  );
}

/** A file at the path of the id that calls itself otherwise has its own finding; every reference to it is an echo. */
function standsAtPath(registry: Registry, kind: Kind, id: string): boolean {
  return keysOfPaths(registry).has(brokenKey(kind, id));
}

const keysOfPaths = oncePerRegistry(({ documents }) => {
  const identities = documents.map(({ source }) => identityOfPath(source.relativePath));
  return new Set(identities.flatMap((each) => (each === null ? [] : [brokenKey(each.kind, each.id)])));
});

function nozzleHit(document: ReadDocument, registry: Registry, leaf: ReferenceLeaf): Hit | null {
  if (typeof leaf.value !== 'string') return null;
  const machineId = machineBeside(document, leaf.path);
  if (machineId === null) {
    return {
      path: leaf.path,
      part: 'value',
      message: `The nozzle "${quote(leaf.value)}" is named without its machine`,
      found: quote(leaf.value),
      help: 'Add `machine:` beside it, since nozzles are identified within their machine.',
    };
  }
  const machine = registry.machine.get(machineId);
  if (machine === undefined) return null;
  const ids = nozzleIds(machine.data);
  if (ids.includes(leaf.value)) return null;
  const help = `Write one of the nozzles of ${machineId}, or add it to ${machine.source.path}.`;
  return dangling(leaf.path, 'nozzle', leaf.value, ids, help);
}

/** Notes of a trial are about the machine of the trial. */
function machineBeside(document: ReadDocument, path: Path): string | null {
  if (document.kind === 'machine') return document.id;
  const isNote = document.kind === 'trial' && path[0] === 'fieldNotes';
  return siblingMachine(document, path) ?? (isNote ? siblingMachine(document, ['nozzle']) : null);
}

function siblingMachine(document: ReadDocument, path: Path): string | null {
  let parent: unknown = document.written;
  for (const step of path.slice(0, -1)) {
    parent = Array.isArray(parent) || isObject(parent) ? Reflect.get(parent, step) : undefined;
  }
  return isObject(parent) && typeof parent.machine === 'string' ? parent.machine : null;
}

function dangling(
  path: Path,
  what: ReferenceTarget,
  id: string,
  known: readonly string[],
  help: string,
): Hit {
  const nearest = nearestWord(id, known);
  return {
    path,
    part: 'value',
    message: `There is no ${what} "${quote(id)}"`,
    found: quote(id),
    ...(known.length > 0 && known.length <= 12 && { allowed: known.join(', ') }),
    help:
      nearest === null
        ? help
        : `Did you mean "${nearest}"? Else: ${help.charAt(0).toLowerCase()}${help.slice(1)}`,
  };
}
