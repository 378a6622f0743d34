import { identityOfPath } from '../../src/registry/kind.ts';
import type { Registry } from '../../src/registry/registry.ts';

/** Kinds whose documents are made once a copy; families, published sources, and what a shop has few of, stand once. */
const copiedKinds = ['machine', 'filament', 'trial'] as const;

/**
 * A registry of about so many profiles: families, published sources, house rules and jobs of a registry as they stand, and the rest of it
 * again and again under other ids and makers. In each copy the densities of filaments differ in a far digit, so that no
 * two trials have the same inputs while every limit stays what it was. Yields paths from the root with their texts.
 */
export function* copiedRegistry(
  registry: Registry,
  texts: ReadonlyMap<string, string>,
  count: number,
): Generator<readonly [path: string, text: string]> {
  const ids = copiedIds(registry);
  const own = [...texts].filter(([path]) => isCopied(path, ids));
  const shared = [...texts].filter(([path]) => !isCopied(path, ids));
  yield* shared;
  const perCopy = own.filter(([path]) => path.endsWith('.yaml')).length;
  const copies = Math.max(1, Math.round((count - shared.length) / perCopy));
  for (let copy = 0; copy < copies; copy++) {
    const rename = renaming(registry, ids, copy);
    for (const [path, text] of own) yield [renamedPath(path, ids, copy), varied(rename(text), copy)];
  }
}

/** Ids of the documents that belong to a copy, longest first, so that no id is taken for a part of another. */
function copiedIds(registry: Registry): string[] {
  const ofKinds = copiedKinds.flatMap((kind) => [...registry[kind].keys()]);
  const sheets = [...registry.source.values()]
    .filter(({ data }) => data.notice !== undefined)
    .map(({ id }) => id);
  return [...ofKinds, ...sheets].sort((a, b) => b.length - a.length || (a < b ? -1 : 1));
}

function isCopied(path: string, ids: readonly string[]): boolean {
  const id = identityOfPath(path.replace(/\.csv$/, '.yaml'))?.id;
  return id !== undefined && ids.includes(id);
}

/** `maker/model` belongs to another maker in each copy, any other id gets a number behind it. */
function renamedId(id: string, copy: number): string {
  const number = String(copy).padStart(4, '0');
  return id.includes('/') ? id.replace('/', `-${number}/`) : `${id}-${number}`;
}

function renamedPath(path: string, ids: readonly string[], copy: number): string {
  const id = ids.find((each) => path.includes(`/${each}.`));
  return id === undefined ? path : path.replace(`/${id}.`, `/${renamedId(id, copy)}.`);
}

function renaming(registry: Registry, ids: readonly string[], copy: number): (text: string) => string {
  const pattern = new RegExp(`(?<![\\w/-])(?:${ids.join('|')})(?![\\w/-])`, 'g');
  const makers = [...registry.machine.values(), ...registry.filament.values()].map(({ data }) => data.maker);
  const maker = new RegExp(`(?<=^maker: )(?:${[...new Set(makers)].join('|')})$`, 'gm');
  return (text) =>
    text
      .replace(pattern, (id) => renamedId(id, copy))
      .replace(maker, (name) => `${name} ${String(copy).padStart(4, '0')}`);
}

/** Densities with the number of the copy in a far digit. */
function varied(text: string, copy: number): string {
  return text.replace(
    /^(density:\n {2}- \{?value: )([\d.]+)(?= g\/cm3)/m,
    (_, key: string, density: string) => key + (Number(density) + copy * 1e-6).toFixed(6),
  );
}
