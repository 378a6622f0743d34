import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { SchemaFiles } from '../scaffold/schema-part.ts';

const shipped = fileURLToPath(new URL('../../schema/', import.meta.url));

/** The schemas that ship with the program. */
export function readSchemaFiles(): SchemaFiles {
  const names = readdirSync(shipped).filter((name) => name.endsWith('.schema.json'));
  return Object.fromEntries(
    names.map((name) => [name, JSON.parse(readFileSync(join(shipped, name), 'utf8'))]),
  );
}

/** Where a registry that depends on this package finds the schemas. */
const installed = 'node_modules/meltbounds/schema';

/**
 * Path from the folder of a profile to the schema of its kind, as editors follow it: to the folder `schema` beside
 * the registry, or to the installed package, whichever is nearer.
 */
export function schemaPathFrom(folder: string, registry: string, file: string): string {
  let parent = dirname(registry);
  for (;;) {
    for (const place of ['schema', installed]) {
      if (existsSync(join(parent, place, file))) return slashed(relative(folder, join(parent, place, file)));
    }
    const above = dirname(parent);
    if (above === parent) break;
    parent = above;
  }
  return slashed(relative(folder, join(dirname(registry), installed, file)));
}

function slashed(path: string): string {
  return path.replaceAll('\\', '/');
}
