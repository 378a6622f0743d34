import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdir, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { isKind, type Kind, kinds } from '../src/registry/kind.ts';
import { presentCode } from '../src/registry/migrations/renamed-rules.ts';
import { failure, type Result, success } from '../src/result.ts';
import { blankMark, codePattern, newRuleFiles } from './rules/new-rule-files.ts';

const root = fileURLToPath(new URL('../', import.meta.url));

// `npm run new-rule CLASS/NAME [KIND]` writes everything that a rule needs, with blanks to fill in.
const [code = '', kind = 'machine'] = process.argv.slice(2);

const asked = readArguments(code, kind);
if (!asked.ok) {
  process.stderr.write(`${asked.error}\nUsage: npm run new-rule CLASS/NAME [KIND]\n`);
  process.exitCode = 2;
} else {
  const isNewClass = !existsSync(dirname(`${root}src/rules/${code}`));
  const files = newRuleFiles(code, asked.value);
  for (const [path, text] of files) {
    await mkdir(dirname(root + path), { recursive: true });
    await writeFile(root + path, text, { flag: 'wx' });
  }
  execFileSync('npm', ['run', '--silent', 'generate'], { cwd: root, stdio: 'inherit' });
  process.stdout.write(whatNext(code, [...files.keys()], isNewClass));
}

function readArguments(code: string, kind: string): Result<Kind, string> {
  if (!codePattern.test(code)) return failure(`"${code}" is no code of a rule, such as safety/hot-bed.`);
  if (!isKind(kind)) return failure(`"${kind}" is no kind of profile: ${kinds.join(', ')}.`);
  if (existsSync(`${root}src/rules/${code}.ts`)) return failure(`There is a rule ${code} already.`);
  if (presentCode(code) !== null)
    return failure(`${code} was another rule, ${presentCode(code)} now; a code is never used again.`);
  return success(kind);
}

function whatNext(code: string, written: readonly string[], isNewClass: boolean): string {
  const [name = ''] = code.split('/');
  return `Written:
${written.map((path) => `  ${path}\n`).join('')}
1. Replace every "${blankMark}" in them.${isNewClass ? `\n   "${name}" is a new class: say in docs/rules.md what it protects.` : ''}
2. npm run generate
3. npx vitest run tests/rules -t ${code}     says what is missing
4. npx vitest run tests/rules/examples.test.ts -t '${name}' --update     writes down what its example raises
`;
}
