import { readFileSync } from 'node:fs';

/** A place in a schema file: its JSON pointer and what stands there. */
export interface SchemaNode {
  readonly pointer: string;
  readonly schema: Readonly<Record<string, unknown>>;
  /** Whether it describes a property of an object, which people fill in. */
  readonly isProperty: boolean;
}

export type SchemaFile = SchemaNode['schema'];

export function readSchemaFile(name: string): SchemaFile {
  const file = new URL(`../../schema/${name}.schema.json`, import.meta.url);
  return JSON.parse(readFileSync(file, 'utf8')) as SchemaFile;
}

/** Every schema inside a schema, itself first. */
export function* nodesOf(schema: SchemaFile, pointer = '', isProperty = false): Generator<SchemaNode> {
  yield { pointer, schema, isProperty };
  for (const keyword of ['properties', 'definitions'] as const) {
    for (const [name, inner] of Object.entries((schema[keyword] ?? {}) as Record<string, SchemaFile>))
      yield* nodesOf(inner, `${pointer}/${keyword}/${name}`, keyword === 'properties');
  }
  if (schema.items !== undefined) yield* nodesOf(schema.items as SchemaFile, `${pointer}/items`);
}
