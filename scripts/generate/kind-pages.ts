import { expectedPath, type Kind, kinds } from '../../src/registry/kind.ts';
import { readSchema, type Schema, splitReference } from './schema-files.ts';

/** Where a property stands, and what its schema says. */
interface Entry {
  readonly path: string;
  readonly required: boolean;
  readonly schema: Schema;
}

const note = 'Generated from the schemas by `npm run generate`; do not edit.';

/** The pages of docs/kinds by file name: one a kind, the statement, the units, and the list of all. */
export function kindPages(): ReadonlyMap<string, string> {
  return new Map([
    ['README.md', indexPage()],
    ...kinds.map((kind) => [`${kind}.md`, kindPage(kind)] as const),
    ['statement.md', statementPage()],
    ['units.md', unitsPage()],
  ]);
}

function indexPage(): string {
  const rows = kinds.map((kind) => {
    const { description } = readSchema(kind);
    return `| [${kind}](${kind}.md) | \`${placeOf(kind)}\` | ${cell(description ?? '')} |`;
  });
  return page([
    '# Kinds of profile',
    note,
    [row('kind', 'file', 'what it holds'), row('---', '---', '---'), ...rows].join('\n'),
    'Numbers with their provenance are [statements](statement.md); every number has one of the [units](units.md) of its dimension.',
  ]);
}

function kindPage(kind: Kind): string {
  const schema = readSchema(kind);
  return page([
    `# ${kind}`,
    note,
    schema.description ?? '',
    `File: \`${placeOf(kind)}\`, its first line \`${schemaLine(kind)}\`.`,
    propertyTable(entriesOf(schema, '')),
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

function statementPage(): string {
  const statement = definition('statement', 'temperatureStatement');
  return page([
    '# Statements',
    note,
    'A statement is a value with its provenance. A property that holds statements is a list: one entry a source and condition. Which one counts: the most specific `at` that fits, then the strongest basis (the first in the list below), then the newest.',
    propertyTable(entriesOf(statement, '')),
  ]);
}

function unitsPage(): string {
  const { definitions = {} } = readSchema('quantity');
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

/** Every property below an object, in the order of the schema; entries of a list carry `[]`. */
function entriesOf(schema: Schema, prefix: string): Entry[] {
  const required = new Set(schema.required);
  return Object.entries(schema.properties ?? {}).flatMap(([key, property]) => {
    const path = `${prefix}${key}`;
    return [{ path, required: required.has(key), schema: property }, ...nestedEntries(property, path)];
  });
}

function nestedEntries(schema: Schema, path: string): Entry[] {
  if (schema.properties !== undefined) return entriesOf(schema, `${path}.`);
  return schema.items?.properties === undefined ? [] : entriesOf(schema.items, `${path}[].`);
}

function propertyTable(entries: readonly Entry[]): string {
  const rows = entries.map(({ path, required, schema }) =>
    row(code(path), required ? 'yes' : '', formOf(schema), cell(schema.description ?? ''), exampleOf(schema)),
  );
  return [
    row('key', 'mandatory', 'form', 'what it says', 'example'),
    row('---', '---', '---', '---', '---'),
    ...rows,
  ].join('\n');
}

function formOf(schema: Schema): string {
  if (schema.$ref !== undefined) return referenceForm(schema.$ref);
  if (schema.const !== undefined) return code(schema.const);
  if (schema.enum !== undefined) return schema.enum.map(code).join(', ');
  if (schema.items !== undefined)
    return `list of ${schema.items.properties ? 'entries' : formOf(schema.items)}`;
  return schema.properties === undefined ? (schema.type ?? '') : 'entries below';
}

function referenceForm(reference: string): string {
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
  const { description = `id of a ${name.replace(/Ref$/, '')}`, enum: values } = definition(file, name);
  return values === undefined ? cell(description) : values.map(code).join(', ');
}

function definition(file: string, name: string): Schema {
  const found = readSchema(file).definitions?.[name];
  if (found === undefined) throw new Error(`${file}.schema.json has no definition ${name}`);
  return found;
}

/** The first example; those of lists and objects are long, and their parts have their own rows or page. */
function exampleOf({ examples = [] }: Schema): string {
  const [first] = examples;
  return typeof first === 'object' ? '' : code(first);
}

function row(...cells: string[]): string {
  return `| ${cells.join(' | ')} |`;
}

function code(value: unknown): string {
  return `\`${cell(String(value))}\``;
}

function cell(text: string): string {
  return text.replaceAll('|', '\\|').replaceAll('\n', ' ');
}

function page(parts: readonly string[]): string {
  return `${parts.join('\n\n')}\n`;
}
