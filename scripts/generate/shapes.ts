import type { QuantityShape } from '../../src/registry/shape.ts';
import type { Dimension } from '../../src/units/dimension.ts';
import { kindNames, readSchema, type Schema, type SchemaReader, splitReference } from './schema-files.ts';

/**
 * Source text of the module that tells the loader, for each kind, where quantities, references and dates stand.
 * Derived from the schemas, so that normalising and linking never name a property themselves.
 */
export function shapesModule(read: SchemaReader = readSchema): string {
  const declared = new Map<string, string>();
  const kinds = kindNames.map((kind) => `  ${kind}: ${shapeText(read(kind), kind, declared, read)},`);
  return [
    '// Generated from schema/ by `npm run generate`; do not edit.',
    "import type { Kind } from '../kind.ts';",
    "import type { ObjectShape, Shape } from '../shape.ts';",
    '',
    ...[...declared].map(([name, text]) => `const ${name}: Shape = ${text};`),
    '',
    '/** Where quantities, references and dates stand in a document of each kind. */',
    'export const shapes: Readonly<Record<Kind, ObjectShape>> = {',
    ...kinds,
    '};',
    '',
  ].join('\n');
}

function shapeText(
  schema: Schema,
  within: string,
  declared: Map<string, string>,
  read: SchemaReader,
): string {
  if (schema.$ref !== undefined) return referencedShape(schema.$ref, within, declared, read);
  if (schema.properties !== undefined) {
    const entries = Object.entries(schema.properties).map(
      ([name, property]) => `${JSON.stringify(name)}: ${shapeText(property, within, declared, read)}`,
    );
    return `{ type: 'object', properties: { ${entries.join(', ')} } }`;
  }
  if (schema.items !== undefined) {
    return `{ type: 'list', items: ${shapeText(schema.items, within, declared, read)} }`;
  }
  return "{ type: 'plain' }";
}

function referencedShape(
  reference: string,
  within: string,
  declared: Map<string, string>,
  read: SchemaReader,
): string {
  const { file, definition } = splitReference(reference, within);
  if (file === 'quantity') return quantityText(quantityShape(definition));
  if (definition.endsWith('Ref')) return `{ type: 'reference', to: '${definition.slice(0, -'Ref'.length)}' }`;
  if (definition === 'date') return "{ type: 'date' }";
  const target = read(file).definitions?.[definition];
  if (target === undefined) throw new Error(`${reference} in ${within}: no such definition`);
  const text = shapeText(target, file, declared, read);
  if (text === "{ type: 'plain' }") return text;
  const name = `${definition}Shape`;
  declared.set(name, text);
  return name;
}

/** What a definition of `quantity.schema.json` stands for, `lengthRange` for instance. */
export function quantityShape(definition: string): QuantityShape {
  const form = definition.endsWith('Range') ? 'range' : definition.endsWith('Unit') ? 'unit' : 'single';
  const dimension = form === 'single' ? definition : definition.slice(0, -(form === 'range' ? 5 : 4));
  // The schema of quantities is generated from the dimensions.
  return { type: 'quantity', dimension: dimension as Dimension, form };
}

function quantityText({ dimension, form }: QuantityShape): string {
  return `{ type: 'quantity', dimension: '${dimension}', form: '${form}' }`;
}
