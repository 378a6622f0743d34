import {
  type BandRange,
  claimedProperty,
  type KeyFacts,
  type PlausibleBand,
  type RangeSpan,
} from '../../src/registry/key-facts.ts';
import type { QuantityShape } from '../../src/registry/shape.ts';
import type { Dimension } from '../../src/units/dimension.ts';
import { parseQuantity, parseRange } from '../../src/units/parse-quantity.ts';
import { requireUnit } from '../../src/units/unit-table.ts';
import {
  featuresOf,
  kindNames,
  readSchema,
  type Schema,
  type SchemaReader,
  splitReference,
  type WrittenBand,
  type WrittenFacts,
} from './schema-files.ts';
import { withList } from './schema-list.ts';
import { quantityShape } from './shapes.ts';

/** A key of a kind of document, with what its schema says of it. */
export interface Key {
  /** `hotEnds[].meltFlow`. */
  readonly place: string;
  /** What it measures, alone or in statements; null for words and for what holds other keys. */
  readonly quantity: QuantityShape | null;
  readonly facts: KeyFacts;
}

/**
 * The keys of an object, in the order of its schema. What stands beside a key wins over what stands in the definition
 * that it refers to.
 */
export function keysOf(schema: Schema, within: string, read: SchemaReader = readSchema): Key[] {
  return keysBelow(schema, within, '', read);
}

function keysBelow(schema: Schema, within: string, place: string, read: SchemaReader): Key[] {
  const properties = Object.entries(schema.properties ?? {}).flatMap(([name, property]) =>
    keyAndBelow(property, within, place === '' ? name : `${place}.${name}`, read),
  );
  return schema.items === undefined
    ? properties
    : [...properties, ...keyAndBelow(schema.items, within, `${place}[]`, read)];
}

function keyAndBelow(schema: Schema, within: string, place: string, read: SchemaReader): Key[] {
  const { written, quantity, target, file } = followed(schema, within, read);
  const key = { place, quantity, facts: readFacts(written, quantity, place, read) };
  return [key, ...(quantity === null ? keysBelow(target, file, place, read) : [])];
}

interface Followed {
  readonly written: WrittenFacts;
  readonly quantity: QuantityShape | null;
  readonly target: Schema;
  readonly file: string;
}

function followed(schema: Schema, within: string, read: SchemaReader): Followed {
  const { $ref, meltbounds: written = {} } = schema;
  if ($ref === undefined) return { written, quantity: null, target: schema, file: within };
  const { file, definition } = splitReference($ref, within);
  if (file === 'quantity') return { written, quantity: quantityShape(definition), target: schema, file };
  if (file === 'statement' && definition.endsWith('Statements')) {
    const quantity = quantityShape(definition.replace(/(?:Measured)?Statements$/, ''));
    return { written, quantity, target: schema, file };
  }
  const target = read(file).definitions?.[definition];
  if (target === undefined) throw new Error(`${$ref} in ${within}: no such definition`);
  const further = followed(target, file, read);
  return { ...further, written: { ...further.written, ...written } };
}

function readFacts(
  written: WrittenFacts,
  quantity: QuantityShape | null,
  place: string,
  read: SchemaReader,
): KeyFacts {
  const { plausible, span, usualUnit, ...words } = written;
  if (plausible === undefined && span === undefined && usualUnit === undefined) return words;
  if (quantity === null) throw new Error(`${place}: a band, a span and a unit are for quantities`);
  const { dimension } = quantity;
  if (usualUnit !== undefined) requireUnit(usualUnit, dimension);
  return {
    ...words,
    ...(plausible !== undefined && { plausible: readBand(plausible, dimension, place, read) }),
    ...(span !== undefined && { span: readSpan(span, place) }),
    ...(usualUnit !== undefined && { usualUnit }),
  };
}

function readBand(
  written: WrittenBand | string,
  dimension: Dimension,
  place: string,
  read: SchemaReader,
): PlausibleBand {
  const { sources = {}, bands = {} } = read('common').meltboundsShared ?? {};
  const band = typeof written === 'string' ? bands[written] : written;
  if (band === undefined) throw new Error(`${place}: common.schema.json has no band "${written}"`);
  const source = sources[band.source];
  if (source === undefined) throw new Error(`${place}: common.schema.json has no source "${band.source}"`);
  return {
    usual: readRange(band.usual, dimension, place),
    possible: readRange(band.possible, dimension, place),
    source,
  };
}

function readRange(text: string, dimension: Dimension, place: string): BandRange {
  const range = parseRange(text, dimension);
  if (!range.ok) throw new Error(`${place}: ${range.error.message}`);
  const { low, high } = range.value;
  return { text, low, high };
}

function readSpan({ factor, difference }: NonNullable<WrittenFacts['span']>, place: string): RangeSpan {
  if (factor !== undefined) return { factor };
  const kelvin = parseQuantity(difference ?? '', 'temperatureDifference');
  if (!kelvin.ok) throw new Error(`${place}: ${kelvin.error.message}`);
  return { kelvin: kelvin.value.value };
}

/** The tables of the module, each with one fact: a bundle holds those that it uses. */
const tables: readonly {
  readonly name: string;
  readonly fact: keyof KeyFacts;
  readonly type: string;
  readonly says: string;
}[] = [
  { name: 'labels', fact: 'label', type: 'string', says: 'What keys are called.' },
  { name: 'safeDirections', fact: 'safe', type: 'SafeDirection', says: 'On which side keys are safe.' },
  { name: 'bands', fact: 'plausible', type: 'PlausibleBand', says: 'In which bands keys lie.' },
  { name: 'spans', fact: 'span', type: 'RangeSpan', says: 'How far the ends of ranges may be apart.' },
  { name: 'claims', fact: 'claim', type: 'number', says: 'What sheets make claims about, in their order.' },
  {
    name: 'limitedSettings',
    fact: 'limits',
    type: 'string',
    says: 'The conditions of trials that keys limit.',
  },
  { name: 'usualUnits', fact: 'usualUnit', type: 'string', says: 'Units in which people state keys.' },
  { name: 'ratioBases', fact: 'ratioTo', type: 'string', says: 'What ratios that are no shares relate to.' },
];

/**
 * Source text of the module that holds what the schemas say of their keys besides the shape: labels, safe directions,
 * plausible bands, converted by the code that converts values.
 */
export function keyFactsModule(read: SchemaReader = readSchema): string {
  const { sources = {} } = read('common').meltboundsShared ?? {};
  const names = new Map(Object.entries(sources).map(([name, source]) => [source, name]));
  const kinds = kindNames.map((kind) => ({ kind, keys: keysOf(read(kind), kind, read) }));
  const conditions = keysOf(read('statement').definitions?.conditions ?? {}, 'statement', read);
  return [
    '// Generated from schema/ by `npm run generate`; do not edit.',
    "import type { FactTable, PlausibleBand, RangeSpan, SafeDirection } from '../key-facts.ts';",
    '',
    ...[...names].map(([source, name]) => `const ${name} = ${JSON.stringify(source)};`),
    '',
    ...tables.flatMap(({ name, fact, type, says }) => [
      `/** ${says} */`,
      `export const ${name} = {`,
      ...kinds.map(({ kind, keys }) => `  ${kind}: ${tableText(keys, fact, names)},`),
      `} as const satisfies FactTable<${type}>;`,
      '',
    ]),
    '/** In which bands the conditions of statements lie. */',
    `export const conditionBands = ${tableText(conditions, 'plausible', names)} as const satisfies Readonly<Record<string, PlausibleBand>>;`,
    '',
    '/** The paths of a printed part, in the order in which policies list them. */',
    `export const features = ${JSON.stringify(featuresOf(read))} as const;`,
    '',
  ].join('\n');
}

function tableText(keys: readonly Key[], fact: keyof KeyFacts, names: ReadonlyMap<string, string>): string {
  const lines = keys
    .filter(({ facts }) => facts[fact] !== undefined)
    .map(({ place, facts }) => `    ${JSON.stringify(place)}: ${literal(facts[fact], names)},`);
  return lines.length === 0 ? '{}' : ['{', ...lines, '  }'].join('\n');
}

/**
 * The schema of the output of `claims`, with the properties that the schema of machines marks as claims; nothing else of
 * the text changes.
 */
export function claimsOutputSchema(text: string, read: SchemaReader = readSchema): string {
  const claimed = keysOf(read('machine'), 'machine', read)
    .filter(({ facts }) => facts.claim !== undefined)
    .sort((a, b) => (a.facts.claim ?? 0) - (b.facts.claim ?? 0))
    .map(({ place, facts }) => claimedProperty(place, facts.limits));
  return withList(text, 'property', claimed);
}

/** A value as source text on one line, a source as the name that holds it. */
function literal(value: unknown, names: ReadonlyMap<string, string>): string {
  if (typeof value === 'string') return names.get(value) ?? JSON.stringify(value);
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const entries = Object.entries(value).map(([key, inner]) => `${key}: ${literal(inner, names)}`);
  return `{ ${entries.join(', ')} }`;
}
