import { readdirSync, readFileSync } from 'node:fs';
import type { SchemaFiles } from '../../src/scaffold/schema-part.ts';

const folder = new URL('../../schema/', import.meta.url);

/** The schemas of the project. */
export const schemas = Object.fromEntries(
  readdirSync(folder)
    .filter((name) => name.endsWith('.schema.json'))
    .map((name) => [name, JSON.parse(readFileSync(new URL(name, folder), 'utf8'))]),
) as SchemaFiles;
