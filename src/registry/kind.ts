/** The kinds of document that a registry holds, in the order in which they are listed. */
export const kinds = [
  'machine',
  'filament',
  'polymer',
  'trial',
  'policy',
  'job',
  'source',
  'addition',
] as const;

/** What a profile describes. */
export type Kind = (typeof kinds)[number];

/** Kinds that people start themselves; polymers are families of which there are few, each with many sources. */
export const newKinds: readonly Kind[] = kinds.filter((kind) => kind !== 'polymer');

/** Folder of each kind under the root of a registry. */
export const kindFolders: Readonly<Record<Kind, string>> = {
  machine: 'machines',
  filament: 'filaments',
  polymer: 'polymers',
  trial: 'trials',
  policy: 'policies',
  job: 'jobs',
  source: 'sources',
  addition: 'additions',
};

export function isKind(value: unknown): value is Kind {
  return kinds.some((kind) => kind === value);
}

/** Kind of the documents in a folder such as `machines`, or null for any other folder. */
export function kindOfFolder(folder: string): Kind | null {
  return kinds.find((kind) => kindFolders[kind] === folder) ?? null;
}

/**
 * Kind and id that a path relative to the root of a registry stands for, `machines/maker/model.yaml` for instance.
 * Trials stand in a folder a year, which is not part of their id.
 */
export function identityOfPath(relativePath: string): { kind: Kind; id: string } | null {
  const [folder = '', ...rest] = relativePath.replace(/\.ya?ml$/, '').split('/');
  const kind = kindOfFolder(folder);
  if (kind === null || rest.length === 0) return null;
  return { kind, id: kind === 'trial' ? (rest.at(-1) ?? '') : rest.join('/') };
}

/** Path, relative to the root of a registry, at which a document belongs. `year` matters for trials only. */
export function expectedPath(kind: Kind, id: string, year: string): string {
  const folder = kindFolders[kind];
  return kind === 'trial' ? `${folder}/${year}/${id}.yaml` : `${folder}/${id}.yaml`;
}
