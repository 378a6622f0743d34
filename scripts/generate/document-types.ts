import { compile, type JSONSchema } from 'json-schema-to-typescript';
import { canonicalTypeName } from '../../src/units/canonical.ts';
import type { Dimension } from '../../src/units/dimension.ts';
import { kindNames, readSchema, type Schema, type SchemaReader, splitReference } from './schema-files.ts';

/** Source text of the types of normalised documents: every quantity a number in its canonical unit. */
export async function documentTypesModule(read: SchemaReader = readSchema): Promise<string> {
  const statement = {
    ...resolve(read('statement').definitions?.volumeFlowStatement ?? {}, 'statement', read),
    title: 'Statement',
  };
  for (const [name, tsType] of [
    ['value', 'Value'],
    ['interval', 'Range'],
  ] as const) {
    const property = statement.properties?.[name];
    if (property !== undefined)
      statement.properties = { ...statement.properties, [name]: { ...property, tsType } };
  }
  const shared = ['fieldNotes', 'acknowledgements'].map((name) => ({
    ...resolve(read('common').definitions?.[name]?.items ?? {}, 'common', read),
    title: name === 'fieldNotes' ? 'FieldNote' : 'Acknowledgement',
  }));
  const texts: string[] = [];
  for (const schema of [statement, ...shared]) texts.push(await typeText(schema));
  for (const kind of kindNames) texts.push(await typeText(resolve(read(kind), kind, read)));
  const body = texts.join('\n').replace('interface Statement {', 'interface Statement<Value> {');
  const used = [...new Set([...Object.values(canonicalTypeName), 'Range'])]
    .filter((name) => new RegExp(`\\b${name}\\b`).test(body))
    .sort();
  return [
    '// Generated from schema/ by `npm run generate`; do not edit.',
    `import type { ${used.join(', ')} } from '../../units/canonical.ts';`,
    '',
    body,
  ].join('\n');
}

/** Replaces references by their target, quantities and shared parts by the name of their type. */
function resolve(schema: Schema, within: string, read: SchemaReader): Schema {
  if (schema.$ref !== undefined) return resolveReference(schema, schema.$ref, within, read);
  const { examples: _, $id: __, definitions: ___, meltbounds: ____, ...rest } = schema;
  const resolved: Schema = { ...rest };
  if (schema.properties !== undefined) {
    resolved.properties = Object.fromEntries(
      Object.entries(schema.properties).map(([name, property]) => [name, resolve(property, within, read)]),
    );
  }
  if (schema.items !== undefined) resolved.items = resolve(schema.items, within, read);
  return resolved;
}

function resolveReference(schema: Schema, reference: string, within: string, read: SchemaReader): Schema {
  const { file, definition } = splitReference(reference, within);
  const { $ref: _, examples: __, meltbounds: ___, ...own } = schema;
  const named = namedType(file, definition);
  if (named !== null) return { ...own, tsType: named };
  const target = read(file).definitions?.[definition];
  if (target === undefined) throw new Error(`${reference} in ${within}: no such definition`);
  return { ...resolve(target, file, read), ...own };
}

function namedType(file: string, definition: string): string | null {
  if (file === 'quantity') return quantityType(definition);
  if (file === 'statement' && definition.endsWith('Statements')) {
    return `readonly Statement<${quantityType(definition.replace(/(?:Measured)?Statements$/, ''))}>[]`;
  }
  if (definition === 'fieldNotes') return 'readonly FieldNote[]';
  if (definition === 'acknowledgements') return 'readonly Acknowledgement[]';
  return null;
}

function quantityType(definition: string): string {
  if (definition.endsWith('Range')) return 'Range';
  if (definition.endsWith('Unit')) return 'string';
  return canonicalTypeName[definition as Dimension];
}

async function typeText(schema: Schema): Promise<string> {
  return compile(schema as JSONSchema, schema.title ?? '', {
    bannerComment: '',
    additionalProperties: false,
    ignoreMinAndMaxItems: true,
    style: { singleQuote: true, printWidth: 110 },
  });
}
