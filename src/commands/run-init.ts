import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type NewFileProblem, writeNewFile } from '../host/write-new-file.ts';
import { compareText } from '../registry/finding.ts';
import { type Result, success } from '../result.ts';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';

const template = fileURLToPath(new URL('../../templates/registry/', import.meta.url));

export interface InitOptions {
  readonly dryRun?: boolean;
}

export async function runInit(
  folder: string | undefined,
  options: InitOptions,
  version: string,
  cli: CliContext,
  exit: Exit,
): Promise<void> {
  const root = resolve(cli.cwd, folder ?? '.');
  const name = packageName(basename(root));
  if (name === null) return exit.cannotRun(unusableName(basename(root)));
  const shown = relative(cli.cwd, root);
  const done = writeTemplate(root, { name, version: version }, options);
  if (!done.ok) return exit.cannotRun(done.error);
  const { written, kept } = done.value;
  cli.out(written.map((path) => `${join(shown, path)}\n`).join(''));
  cli.err(afterwards(shown, kept, options));
}

/** Name of the package in a folder, or null where none can be made of the folder's. */
function packageName(folder: string): string | null {
  const name = folder
    .toLowerCase()
    .replace(/[^a-z0-9._-]+/g, '-')
    .replace(/^[^a-z0-9]+/, '');
  return name === '' || name.length > 200 ? null : name;
}

function unusableName(folder: string) {
  return {
    message: `No package can be named after the folder "${folder}"`,
    help: 'Choose one with Latin letters or digits, for instance: meltbounds init our-limits',
  };
}

interface Placeholders {
  readonly name: string;
  readonly version: string;
}

interface Initialised {
  readonly written: readonly string[];
  /** Files that were there already. */
  readonly kept: readonly string[];
}

function writeTemplate(
  root: string,
  placeholders: Placeholders,
  { dryRun }: InitOptions,
): Result<Initialised, NewFileProblem> {
  const written: string[] = [];
  const kept: string[] = [];
  for (const path of templatePaths()) {
    const target = path.replace(/^_/, '.');
    if (existsSync(join(root, target))) {
      kept.push(target);
      continue;
    }
    const text = filled(readFileSync(join(template, path), 'utf8'), placeholders);
    const done = dryRun ? success(true) : writeNewFile(root, target, text);
    if (!done.ok) return done;
    written.push(target);
  }
  return success({ written, kept });
}

/** Paths in the template. npm leaves out files such as `.gitignore`, so a dot at the start is written `_`. */
function templatePaths(): string[] {
  return readdirSync(template, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(template, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .sort(compareText);
}

function filled(text: string, { name, version }: Placeholders): string {
  return text.replaceAll('{{name}}', name).replaceAll('{{version}}', `^${version}`);
}

function afterwards(shown: string, kept: readonly string[], { dryRun }: InitOptions): string {
  const lines = [
    ...(kept.length === 0 ? [] : [`Left as they are: ${kept.join(', ')}.`]),
    ...(kept.includes('package.json')
      ? [
          'package.json needs: "meltbounds": {"registries": ["meltbounds", "profiles"]}, and meltbounds as a dependency.',
        ]
      : []),
    ...(dryRun ? [] : [`Then: ${shown === '' ? '' : `cd ${shown} && `}npm install && npm run check`]),
  ];
  return lines.map((line) => `${line}\n`).join('');
}
