import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import writeFileAtomic from 'write-file-atomic';
import { bundledSchema } from './generate/bundled-schema.ts';
import { catalogueEntries } from './generate/catalogue-entries.ts';
import { documentTypesModule } from './generate/document-types.ts';
import { claimsOutputSchema, keyFactsModule } from './generate/key-facts.ts';
import { quantitySchema } from './generate/quantity-schema.ts';
import { ruleFilesModule } from './generate/rule-files.ts';
import { kindNames, schemaFolder, schemaPath } from './generate/schema-files.ts';
import { shapesModule } from './generate/shapes.ts';
import { statementSchema } from './generate/statement-schema.ts';
import { validatorsModule } from './generate/validators.ts';

const generated = fileURLToPath(new URL('../src/registry/generated/', import.meta.url));
const generatedRules = fileURLToPath(new URL('../src/rules/generated/', import.meta.url));
const generatedSite = fileURLToPath(new URL('../src/site/generated/', import.meta.url));
const docs = fileURLToPath(new URL('../docs/', import.meta.url));

/** Writes only what differs, so that a build with nothing new touches nothing. */
async function keepCurrent(path: string, text: string): Promise<void> {
  if (existing(path) !== text) await writeFileAtomic(path, text);
}

function existing(path: string): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return null;
  }
}

const json = (value: object) => `${JSON.stringify(value, null, 2)}\n`;

await mkdir(generated, { recursive: true });
await mkdir(generatedRules, { recursive: true });
await keepCurrent(schemaPath('quantity'), json(quantitySchema()));
await keepCurrent(schemaPath('statement'), json(statementSchema()));
await mkdir(`${schemaFolder}bundle`, { recursive: true });
for (const kind of kindNames) await keepCurrent(schemaPath(`bundle/${kind}`), json(bundledSchema(kind)));
await keepCurrent(`${schemaFolder}bundle/catalogue.json`, json(catalogueEntries()));
await keepCurrent(`${generated}documents.ts`, await documentTypesModule());
await keepCurrent(`${generated}shapes.ts`, shapesModule());
await keepCurrent(`${generated}key-facts.ts`, keyFactsModule());
const claimsOutput = schemaPath('output/claims');
await keepCurrent(claimsOutput, claimsOutputSchema(existing(claimsOutput) ?? ''));
await keepCurrent(`${generated}validators.js`, await validatorsModule());
await keepCurrent(`${generatedRules}rule-files.ts`, ruleFilesModule());

// What the scripts of the catalogue show of the registry reads what has just been written.
const { siteScriptModule } = await import('./generate/site-script.ts');
await mkdir(generatedSite, { recursive: true });
await keepCurrent(`${generatedSite}site-script.ts`, await siteScriptModule());
const { benchScriptsModule } = await import('./generate/bench-scripts.ts');
await keepCurrent(`${generatedSite}bench-scripts.ts`, await benchScriptsModule());

// Rules, kinds and methods read by what has just been written, so they cannot be loaded before.
const { listingOutputs, listingSchema } = await import('./generate/output-lists.ts');
for (const name of listingOutputs) {
  const path = schemaPath(`output/${name}`);
  await keepCurrent(path, listingSchema(name, existing(path) ?? ''));
}
const { rulePages } = await import('./generate/rule-pages.ts');
const { kindPages } = await import('./generate/kind-pages.ts');
await keepFolder('rules', rulePages());
await keepFolder('kinds', kindPages());
const { templateVariablesPage } = await import('./generate/template-variables-page.ts');
await keepCurrent(`${docs}template-variables.md`, templateVariablesPage());
const { renamedRulesPage } = await import('./generate/renamed-rules-page.ts');
await keepCurrent(`${docs}renamed-rules.md`, renamedRulesPage());

/** Makes a folder of docs/ hold these pages and no other. */
async function keepFolder(name: string, pages: ReadonlyMap<string, string>): Promise<void> {
  const folder = `${docs}${name}/`;
  await mkdir(folder, { recursive: true });
  for (const [file, text] of pages) await keepCurrent(`${folder}${file}`, text);
  for (const file of readdirSync(folder)) if (!pages.has(file)) rmSync(`${folder}${file}`);
}
