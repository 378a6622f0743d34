import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const folder = fileURLToPath(new URL('../../src/rules/', import.meta.url));

/** Folders of `src/rules/` that are no class of rules. */
const otherFolders = ['engine', 'generated'];

/** The codes of all rules, `CLASS/NAME`, by the files that hold them. */
export function ruleCodes(): readonly string[] {
  const classes = readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && !otherFolders.includes(entry.name))
    .map(({ name }) => name);
  const codes = classes.flatMap((name) =>
    readdirSync(`${folder}${name}`).map((file) => `${name}/${file.replace(/\.ts$/, '')}`),
  );
  return codes.sort();
}

/** A module that holds every rule under its code. */
export function ruleFilesModule(codes: readonly string[] = ruleCodes()): string {
  const imports = codes.map((code) => `import { rule as ${identifier(code)} } from '../${code}.ts';`);
  const entries = codes.map((code) => `  '${code}': ${identifier(code)},`);
  return `// Generated from the files of src/rules by \`npm run generate\`; do not edit.
${imports.join('\n')}
import type { RuleFile } from '../engine/rule.ts';

/** Every rule by its code. */
export const ruleFiles = {
${entries.join('\n')}
} satisfies Readonly<Record<string, RuleFile>>;

/** Every code that a finding of \`check\` can carry. */
export type RuleCode = keyof typeof ruleFiles;
`;
}

/** `units/bare-number` → `unitsBareNumber`. */
function identifier(code: string): string {
  return code.replaceAll(/[/-](\w)/g, (_, letter: string) => letter.toUpperCase());
}
