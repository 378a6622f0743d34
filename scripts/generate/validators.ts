import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import standaloneCode from 'ajv/dist/standalone/index.js';
import formatsPlugin from 'ajv-formats';
import { build } from 'esbuild';
import type { Kind } from '../../src/registry/kind.ts';
import {
  kindNames,
  readSchema,
  type Schema,
  type SchemaReader,
  schemaFolder,
  schemaPath,
  sharedNames,
} from './schema-files.ts';

// Both packages are CommonJS whose callable stands under `default` when imported from an ES module.
const addFormats = formatsPlugin.default;
const standalone = standaloneCode.default;

/** SHA-256 of all schema files, by which a test sees that the compiled validators are current. */
export function schemaDigest(): string {
  const hash = createHash('sha256');
  for (const name of [...sharedNames, ...kindNames]) hash.update(readFileSync(schemaPath(name)));
  return hash.digest('hex');
}

/** Tells a validator our own keywords, which say nothing about what is valid; what they may hold is checked all the same. */
export function addFactKeywords(ajv: Ajv, keyFacts: Schema): void {
  const { $id = '' } = keyFacts;
  ajv.addSchema(keyFacts);
  ajv.addKeyword({ keyword: 'meltbounds', metaSchema: { $ref: $id } });
  ajv.addKeyword({ keyword: 'meltboundsShared', metaSchema: { $ref: `${$id}#/definitions/shared` } });
}

/** Source text of an ES module that exports one validator a kind, of some or all kinds, and the digest of the schemas. */
export async function validatorsModule(
  read: SchemaReader = readSchema,
  kinds: readonly Kind[] = kindNames,
): Promise<string> {
  const ajv = new Ajv({
    allErrors: true,
    verbose: true,
    messages: false,
    strict: true,
    inlineRefs: false,
    code: { source: true, esm: true },
  });
  addFormats(ajv);
  // Words that language servers for YAML understand, and that say nothing about what is valid.
  ajv.addVocabulary(['defaultSnippets', 'patternErrorMessage']);
  addFactKeywords(ajv, read('key-facts'));
  for (const name of [...sharedNames, ...kindNames]) ajv.addSchema(read(name));
  const ids = Object.fromEntries(
    kinds.map((kind) => [kind, `https://meltbounds.example/schema/${kind}.schema.json`]),
  );
  const bundled = await build({
    stdin: {
      contents: `${withoutUnread(standalone(ajv, ids))}\nexport const validators = { ${kinds.join(', ')} };`,
      resolveDir: schemaFolder,
      loader: 'js',
    },
    bundle: true,
    format: 'esm',
    platform: 'neutral',
    mainFields: ['main'],
    write: false,
    minify: true,
    banner: { js: '// Compiled from schema/ by `npm run generate`; do not edit.' },
    footer: { js: `export const schemaDigest = '${schemaDigest()}';` },
  });
  const [file] = bundled.outputFiles;
  if (file === undefined) throw new Error('the bundler returned no file');
  return file.text;
}

/**
 * Validators without what `ShapeError` does not know: a third of them, which every start of the program would parse, and
 * each error and each call would carry.
 */
function withoutUnread(code: string): string {
  const lean = code
    .replace(/schemaPath:"[^"]*",/g, '')
    .replace(/,schema:(?:(?!,parentSchema:).)*(?=,parentSchema:)/g, '')
    .replace(/params:\{pattern: "(?:[^"\\]|\\.)*"\}/g, 'params:{}')
    .replaceAll(', parentData, parentDataProperty, rootData=data}', '}')
    .replaceAll(',parentData,parentDataProperty,rootData}', '}')
    .replace(/,parentData:\w+,parentDataProperty:(?:(?!,rootData\}).)*,rootData\}/g, '}');
  const left = /schemaPath|,schema:|params:\{pattern|parentData/.exec(lean);
  if (left !== null) throw new Error(`the validators still hold ${lean.slice(left.index, left.index + 80)}`);
  return lean;
}
