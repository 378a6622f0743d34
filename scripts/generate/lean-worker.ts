import { readFileSync } from 'node:fs';
import type { Plugin } from 'rolldown';
import { parseAst } from 'rolldown/parseAst';
import { validatorsModule } from './validators.ts';

/** What a rule says of itself for the documentation and for reports; the page shows none of it. */
const documented: readonly string[] = ['statement', 'rationale', 'source', 'formula', 'example'];

const ruleFile = /\/src\/rules\/(?!engine\/|generated\/)[a-z]+\/[a-z-]+\.ts$/;

/**
 * Leaves out of the bench page's worker what it has no use for, so that a tablet loads a third less: what rules say of themselves, the
 * fast reader of YAML, and the validators of all kinds but the trial, since the other profiles were checked when the catalogue
 * was written.
 */
export async function leanWorker(): Promise<Plugin> {
  const validators = trialAlone(await validatorsModule(undefined, ['trial']));
  return {
    name: 'lean-worker',
    load(id) {
      const path = id.replaceAll('\\', '/');
      if (path.endsWith('/registry/yaml/plain-yaml.ts')) return 'export const plainYaml = () => null;';
      if (path.endsWith('/registry/generated/validators.js')) return validators;
      if (!ruleFile.test(path)) return null;
      return { code: withoutDocumentation(readFileSync(id, 'utf8')), moduleType: 'ts' };
    },
  };
}

/** Validators among which whatever is no trial passes. */
function trialAlone(code: string): string {
  const all = /export\{\w+ as trial,(\w+) as validators\};/;
  if (!all.test(code)) throw new Error('the validators are exported in another way than expected');
  return code.replace(
    all,
    'export const validators = new Proxy($1, { get: (known, kind) => known[kind] ?? (() => true) });',
  );
}

/** The file of a rule without the keys that are for the documentation. */
function withoutDocumentation(text: string): string {
  const cuts = documentedPlaces(text).toSorted(([one], [other]) => other - one);
  return cuts.reduce(
    (rest, [start, end]) => rest.slice(0, start) + rest.slice(end).replace(/^\s*,/, ''),
    text,
  );
}

function documentedPlaces(text: string): (readonly [start: number, end: number])[] {
  const exported = parseAst(text, { lang: 'ts' }).body.flatMap((statement) =>
    statement.type === 'ExportNamedDeclaration' && statement.declaration?.type === 'VariableDeclaration'
      ? statement.declaration.declarations
      : [],
  );
  const rules = exported.flatMap(({ init }) => {
    const made = init?.type === 'CallExpression' ? init.arguments[0] : init;
    return made?.type === 'ObjectExpression' ? made.properties : [];
  });
  return rules.flatMap((property) =>
    property.type === 'Property' &&
    property.key.type === 'Identifier' &&
    documented.includes(property.key.name)
      ? [[property.start, property.end] as const]
      : [],
  );
}
