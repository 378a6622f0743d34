import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { KeyFacts } from '../../src/registry/key-facts.ts';

/** The part of JSON Schema that the project's schemas use. */
export interface Schema {
  $id?: string;
  $ref?: string;
  title?: string;
  description?: string;
  examples?: unknown[];
  type?: string;
  const?: unknown;
  enum?: string[];
  format?: string;
  pattern?: string;
  properties?: Record<string, Schema>;
  additionalProperties?: boolean;
  required?: string[];
  items?: Schema;
  definitions?: Record<string, Schema>;
  minProperties?: number;
  dependencies?: Record<string, string[]>;
  tsType?: string;
  meltbounds?: WrittenFacts;
  meltboundsShared?: { sources: Record<string, string>; bands: Record<string, WrittenBand> };
}

/** What the keyword `meltbounds` holds, see `schema/key-facts.schema.json`. */
export interface WrittenFacts extends Omit<KeyFacts, 'plausible' | 'span'> {
  readonly plausible?: WrittenBand | string;
  readonly span?: { readonly factor?: number; readonly difference?: string };
}

/** A band as it is written: ranges as text, a source by its name. */
export interface WrittenBand {
  readonly usual: string;
  readonly possible: string;
  readonly source: string;
}

/** Gives a schema by its name. */
export type SchemaReader = (name: string) => Schema;

export const kindNames = [
  'machine',
  'filament',
  'polymer',
  'trial',
  'policy',
  'job',
  'source',
  'addition',
] as const;
export const sharedNames = ['common', 'quantity', 'statement'] as const;

export const schemaFolder = fileURLToPath(new URL('../../schema/', import.meta.url));

export function schemaPath(name: string): string {
  return `${schemaFolder}${name}.schema.json`;
}

export function readSchema(name: string): Schema {
  return JSON.parse(readFileSync(schemaPath(name), 'utf8')) as Schema;
}

/** Splits `common.schema.json#/definitions/date`, or `#/definitions/date` inside `common`, into file and definition. */
export function splitReference(reference: string, within: string): { file: string; definition: string } {
  const [path = '', pointer = ''] = reference.split('#');
  return {
    file: path === '' ? within : path.replace('.schema.json', ''),
    definition: pointer.replace('/definitions/', ''),
  };
}

/** The paths of a printed part, in the order in which policies list them. */
export function featuresOf(read: SchemaReader): string[] {
  return Object.keys(read('policy').properties?.fractions?.properties ?? {});
}
