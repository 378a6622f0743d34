import { rulePageName } from '../../src/report/rules/rule-address.ts';

/** A file of the project: its path from the root and its text. */
export interface ProjectFile {
  readonly path: string;
  readonly text: string;
}

/** A file as it is and as it shall be. */
export interface FileChange {
  readonly before: ProjectFile;
  readonly after: ProjectFile;
}

/** What is generated anew, and what tells of the past. */
const untouched = /^(?:docs\/rules\/|docs\/renamed-rules\.md$|src\/rules\/generated\/|CHANGELOG\.md$)/;

/** The files that name a rule by its code, its file or its page, under the new code. */
export function renamedFiles(files: readonly ProjectFile[], old: string, now: string): FileChange[] {
  return files.flatMap((before) => {
    if (untouched.test(before.path) || before.path === renamedRulesPath) return [];
    const after = { path: renamedPath(before.path, old, now), text: renamedText(before.text, old, now) };
    return after.path === before.path && after.text === before.text ? [] : [{ before, after }];
  });
}

/** `src/rules/CLASS/NAME.ts` and `tests/rules/CLASS/NAME.test.ts`. */
function renamedPath(path: string, old: string, now: string): string {
  const own = [`src/rules/${old}.ts`, `tests/rules/${old}.test.ts`];
  return own.includes(path) ? path.replace(old, now) : path;
}

/** Whole codes only: `safety/liner-fumes` is not part of `safety/liner-fumes-again`. */
function renamedText(text: string, old: string, now: string): string {
  return text
    .replaceAll(new RegExp(`(?<![\\w-])${old}(?![\\w-])`, 'g'), now)
    .replaceAll(new RegExp(`(?<![\\w-])${rulePageName(old).replace('.', '\\.')}`, 'g'), rulePageName(now));
}

export const renamedRulesPath = 'src/registry/migrations/renamed-rules.ts';

const tablePattern = /(renamedRules: Readonly<Record<string, string>> = )\{[^}]*\}/;

/** The table of renamed codes with one more; codes that led to the old one lead to the new one. */
export function withRenamed(
  table: Readonly<Record<string, string>>,
  old: string,
  now: string,
): Readonly<Record<string, string>> {
  const followed = Object.entries(table).map(([code, next]) => [code, next === old ? now : next] as const);
  const all = [...followed.filter(([code]) => code !== now), [old, now] as const];
  return Object.fromEntries(all.sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** The text of the module with another table. */
export function withTable(text: string, table: Readonly<Record<string, string>>): string {
  const lines = Object.entries(table).map(([old, now]) => `  '${old}': '${now}',\n`);
  return text.replace(tablePattern, `$1{\n${lines.join('')}}`);
}
