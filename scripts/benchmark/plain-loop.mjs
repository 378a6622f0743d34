// What a plain loop over a registry takes: a YAML parser and a JSON Schema validator, and nothing else.
// Usage: node scripts/benchmark/plain-loop.mjs js-yaml|yaml FOLDER
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import formats from 'ajv-formats';

const [parser, folder] = process.argv.slice(2);
const parse = parser === 'yaml' ? (await import('yaml')).parse : (await import('js-yaml')).load;
const schemas = new URL('../../schema/', import.meta.url);
const ajv = new Ajv({ allErrors: true, strict: false });
formats.default(ajv);
for (const name of readdirSync(schemas).filter((each) => each.endsWith('.json'))) {
  ajv.addSchema(JSON.parse(readFileSync(new URL(name, schemas), 'utf8')));
}
let invalid = 0;
for (const path of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
  if (!path.endsWith('.yaml')) continue;
  const document = parse(readFileSync(join(folder, path), 'utf8'));
  const validate = ajv.getSchema(`https://meltbounds.example/schema/${document.kind}.schema.json`);
  if (!validate(document)) invalid += 1;
}
if (invalid > 0) throw new Error(`${invalid} invalid profiles`);
