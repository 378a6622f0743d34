import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

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
}

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
