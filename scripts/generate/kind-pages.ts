import { expectedPath, type Kind, kinds } from '../../src/registry/kind.ts';
import { factsSection } from './facts-section.ts';
import { keysOf } from './key-facts.ts';
import { cell, code, page, row, table } from './page-parts.ts';
import { readSchema, type Schema, type SchemaReader, splitReference } from './schema-files.ts';

/** Where a property stands, and what its schema says. */
interface Entry {
  readonly path: string;
  readonly required: boolean;
  readonly schema: Schema;
}

const note = 'Generated from the schemas by `npm run generate`; do not edit.';

/** The pages of docs/kinds by file name: one a kind, the statement, the units, and the list of all. */
export function kindPages(read: SchemaReader = readSchema): ReadonlyMap<string, string> {
  return new Map([
    ['README.md', indexPage(read)],
    ...kinds.map((kind) => [`${kind}.md`, kindPage(kind, read)] as const),
    ['statement.md', statementPage(read)],
    ['units.md', unitsPage(read)],
  ]);
}

function indexPage(read: SchemaReader): string {
  const rows = kinds.map((kind) => {
    const { description } = read(kind);
    return `| [${kind}](${kind}.md) | \`${placeOf(kind)}\` | ${cell(description ?? '')} |`;
  });
  return page([
    '# Kinds of profile',
    note,
    table(['kind', 'file', 'what it holds'], rows),
    'Numbers with their provenance are [statements](statement.md); every number has one of the [units](units.md) of its dimension.',
  ]);
}

function kindPage(kind: Kind, read: SchemaReader): string {
  const schema = read(kind);
  return page([
    `# ${kind}`,
    note,
    schema.description ?? '',
    `File: \`${placeOf(kind)}\`, its first line \`${schemaLine(kind)}\`.`,
    propertyTable(entriesOf(schema, '', schema), read),
    ...factsSection(keysOf(schema, kind, read), read),
  ]);
}

function placeOf(kind: Kind): string {
  const id = kind === 'machine' || kind === 'filament' ? 'MAKER/NAME' : kind === 'polymer' ? 'SYMBOL' : 'ID';
  return `profiles/${expectedPath(kind, id, 'YEAR')}`;
}

function schemaLine(kind: Kind): string {
  const up = '../'.repeat(placeOf(kind).split('/').length - 1);
  return `# yaml-language-server: $schema=${up}schema/${kind}.schema.json`;
}

function statementPage(read: SchemaReader): string {
  const statement = definition('statement', 'temperatureStatement', read);
  return page([
    '# Statements',
    note,
    'A statement is a value with its provenance. A property that holds statements is a list: one entry a source and condition. Which one counts: the most specific `at` that fits, then the strongest basis (the first in the list below), then the newest.',
    propertyTable(entriesOf(statement, '', read('statement')), read),
  ]);
}

function unitsPage(read: SchemaReader): string {
  const { definitions = {} } = read('quantity');
  const sections = Object.entries(definitions)
    .filter(([name]) => !/(?:Range|Unit)$/.test(name))
    .map(([name, { description = '', examples = [] }]) =>
      [`## ${name}`, description, `Example: ${examples.map(code).join(', ')}`].join('\n\n'),
    );
  return page([
    '# Units',
    note,
    'Codes are those of UCUM, case-sensitive; money has the codes of ISO 4217. A range is written `low..high unit`.',
    ...sections,
  ]);
}

/** Every property below an object, in the order of the schema; entries of a list carry `[]`. `file` is the whole schema. */
function entriesOf(schema: Schema, prefix: string, file: Schema): Entry[] {
  const required = new Set(schema.required);
  return Object.entries(schema.properties ?? {}).flatMap(([key, written]) => {
    const property = withOwnDefinition(written, file);
    const path = `${prefix}${key}`;
    return [{ path, required: required.has(key), schema: property }, ...nestedEntries(property, path, file)];
  });
}

/** A property with what it refers to in its own file. */
function withOwnDefinition(schema: Schema, file: Schema): Schema {
  const name = /^#\/definitions\/(\w+)$/.exec(schema.$ref ?? '')?.[1];
  const target = name === undefined ? undefined : file.definitions?.[name];
  if (target === undefined) return schema;
  const { $ref: _, ...own } = schema;
  return { ...withOwnDefinition(target, file), ...own };
}

function nestedEntries(schema: Schema, path: string, file: Schema): Entry[] {
  if (schema.properties !== undefined) return entriesOf(schema, `${path}.`, file);
  return schema.items?.properties === undefined ? [] : entriesOf(schema.items, `${path}[].`, file);
}

function propertyTable(entries: readonly Entry[], read: SchemaReader): string {
  const rows = entries.map(({ path, required, schema }) =>
    row(
      code(path),
      required ? 'yes' : '',
      formOf(schema, read),
      cell(schema.description ?? ''),
      exampleOf(schema),
    ),
  );
  return table(['key', 'mandatory', 'form', 'what it says', 'example'], rows);
}

function formOf(schema: Schema, read: SchemaReader): string {
  if (schema.$ref !== undefined) return referenceForm(schema.$ref, read);
  if (schema.const !== undefined) return code(schema.const);
  if (schema.enum !== undefined) return schema.enum.map(code).join(', ');
  if (schema.items !== undefined)
    return `list of ${schema.items.properties ? 'entries' : formOf(schema.items, read)}`;
  return schema.properties === undefined ? (schema.type ?? '') : 'entries below';
}

function referenceForm(reference: string, read: SchemaReader): string {
  const { file, definition: name } = splitReference(reference, 'common');
  if (file === 'quantity') {
    const dimension = name.replace(/(?:Range|Unit)$/, '');
    return `[${name.replace(/^(.*)(Range|Unit)$/, (_, of, what) => `${what.toLowerCase()} of ${of}`)}](units.md#${dimension.toLowerCase()})`;
  }
  if (file === 'statement') {
    const dimension = name.replace(/(?:Range|Measured)?Statements?$/, '');
    const what = /RangeStatements?$/.test(name) ? `range of ${dimension}` : dimension;
    return `[statements](statement.md) of [${what}](units.md#${dimension.toLowerCase()})`;
  }
  if (name.endsWith('Text')) return 'text';
  if (name === 'version') return 'semantic version';
  const kind = kinds.find((each) => name === `${each}Ref`);
  if (kind !== undefined) return `id of a [${kind}](${kind}.md)`;
  const { description = `id of a ${name.replace(/Ref$/, '')}`, enum: values } = definition(file, name, read);
  return values === undefined ? cell(description) : values.map(code).join(', ');
}

function definition(file: string, name: string, read: SchemaReader): Schema {
  const found = read(file).definitions?.[name];
  if (found === undefined) throw new Error(`${file}.schema.json has no definition ${name}`);
  return found;
}

/** The first example; those of lists and objects are long, and their parts have their own rows or page. */
function exampleOf({ examples = [] }: Schema): string {
  const [first] = examples;
  return typeof first === 'object' ? '' : code(first);
}
