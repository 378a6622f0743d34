import { numberPattern } from '../../src/units/number-form.ts';
import { portableNumberPattern } from './portable-number.ts';
import { readSchema, type Schema, type SchemaReader, splitReference } from './schema-files.ts';

/** What a bundle keeps of a schema: draft-07 alone, without the words of editors and of our own generators. */
const keptKeywords = new Set([
  ...['title', 'description', 'examples', 'type', 'const', 'enum', 'minLength', 'maxLength'],
  ...['minimum', 'maximum', 'required', 'additionalProperties', 'minProperties', 'dependencies'],
  ...['minItems', 'maxItems', 'uniqueItems'],
]);

/**
 * The schema of a kind as one file that needs no other and no address: what it refers to stands among its definitions as
 * `FILE.NAME`. No `format`, which strict validators refuse without an extension: patterns say the same. And no text
 * that a pattern judges may hold a line end, since `$` also matches before a last one in some dialects.
 */
export function bundledSchema(kind: string, read: SchemaReader = readSchema): object {
  const root = read(kind);
  const definitions = new Map<string, object>();
  const waiting: { readonly name: string; readonly file: string; readonly schema: Schema }[] = [];
  const refer = (reference: string, within: string): string => {
    const { file, definition } = splitReference(reference, within);
    const name = `${file}.${definition}`;
    if (!definitions.has(name)) {
      definitions.set(name, {});
      waiting.push({ name, file, schema: read(file).definitions?.[definition] ?? {} });
    }
    return `#/definitions/${name}`;
  };
  const body = bundled(root, (reference) => refer(reference, kind));
  for (let next = waiting.shift(); next !== undefined; next = waiting.shift()) {
    const { name, file, schema } = next;
    definitions.set(
      name,
      bundled(schema, (reference) => refer(reference, file)),
    );
  }
  const sorted = [...definitions].sort(([a], [b]) => (a < b ? -1 : 1));
  return {
    $schema: 'http://json-schema.org/draft-07/schema#',
    ...body,
    definitions: Object.fromEntries(sorted),
  };
}

function bundled(schema: Schema, refer: (reference: string) => string): object {
  const kept = Object.entries(schema).filter(([keyword]) => keptKeywords.has(keyword));
  const { $ref, properties, items } = schema;
  return {
    ...($ref !== undefined && { $ref: refer($ref) }),
    ...Object.fromEntries(kept),
    ...(schema.pattern !== undefined && {
      pattern: schema.pattern.replaceAll(numberPattern, portableNumberPattern),
      not: { pattern: '\n' },
    }),
    ...(properties && {
      properties: Object.fromEntries(
        Object.entries(properties).map(([key, each]) => [key, bundled(each, refer)]),
      ),
    }),
    ...(items && { items: bundled(items, refer) }),
  };
}
