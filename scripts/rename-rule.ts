import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { mkdir, rm, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { presentCode, renamedRules } from '../src/registry/migrations/renamed-rules.ts';
import { codePattern } from './rules/new-rule-files.ts';
import {
  type ProjectFile,
  renamedFiles,
  renamedRulesPath,
  withRenamed,
  withTable,
} from './rules/rename-rule-files.ts';

const root = fileURLToPath(new URL('../', import.meta.url));

// `npm run rename-rule OLD NEW` moves a rule with everything that names it, and notes its old code for `migrate`.
const [old = '', now = ''] = process.argv.slice(2);

const fault = faultOf(old, now);
if (fault !== null) {
  process.stderr.write(`${fault}\nUsage: npm run rename-rule OLD NEW\n`);
  process.exitCode = 2;
} else {
  const changes = renamedFiles(projectFiles(), old, now);
  for (const { before, after } of changes) {
    if (after.path !== before.path) await rm(root + before.path);
    await mkdir(dirname(root + after.path), { recursive: true });
    await writeFile(root + after.path, after.text);
  }
  const module = readFileSync(root + renamedRulesPath, 'utf8');
  await writeFile(root + renamedRulesPath, withTable(module, withRenamed(renamedRules, old, now)));
  const paths = [...changes.map(({ after }) => after.path), renamedRulesPath];
  execFileSync('npm', ['run', '--silent', 'generate'], { cwd: root, stdio: 'inherit' });
  // Imports stand in the order of their paths.
  const code = paths.filter((path) => path.endsWith('.ts'));
  execFileSync('npx', ['biome', 'check', '--write', ...code], { cwd: root, stdio: 'ignore' });
  process.stdout.write(`${paths.map((path) => `${path}\n`).join('')}
Write a changeset, read docs/rules.md and the how-to pages again, and run
  npx vitest run tests/rules/examples.test.ts --update
`);
}

function faultOf(old: string, now: string): string | null {
  if (!existsSync(`${root}src/rules/${old}.ts`)) return `There is no rule "${old}".`;
  if (!codePattern.test(now)) return `"${now}" is no code of a rule, such as safety/hot-bed.`;
  if (existsSync(`${root}src/rules/${now}.ts`)) return `There is a rule ${now} already.`;
  const other = presentCode(now);
  return other === null || other === old ? null : `${now} was another rule, ${other} now.`;
}

/** Every text file that git knows or would add. */
function projectFiles(): ProjectFile[] {
  const listed = execFileSync('git', ['ls-files', '-coz', '--exclude-standard'], { cwd: root });
  const paths = listed.toString().split('\0').filter(isText);
  return paths.filter((path) => existsSync(root + path)).map((path) => ({ path, text: textOf(path) }));
}

function isText(path: string): boolean {
  return /\.(?:ts|js|md|json|ya?ml|txt|html|csv|sh|mustache)$/.test(path);
}

function textOf(path: string): string {
  return readFileSync(root + path, 'utf8');
}
