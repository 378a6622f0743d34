import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { unwritable } from '../host/file-error.ts';
import { tidyFolders } from '../host/writing/leftovers.ts';
import { makeFolder } from '../host/writing/write-files.ts';
import { type NewFileProblem, writeNewFile } from '../host/writing/write-new-file.ts';
import { compareText } from '../registry/finding.ts';
import { type Result, success } from '../result.ts';
import { pathLines } from '../text/terminal-text.ts';
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
  const done = await writeTemplate(root, { name, version: version }, options);
  if (!done.ok) return exit.cannotRun(done.error);
  const { written, kept } = done.value;
  cli.out(pathLines(written.map((path) => join(shown, path))));
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

/** A folder that is not there comes whole; in one that is there, package.json comes last. */
async function writeTemplate(
  root: string,
  placeholders: Placeholders,
  { dryRun }: InitOptions,
): Promise<Result<Initialised, NewFileProblem>> {
  const files = templatePaths().map((path): TemplateFile => {
    const text = filled(readFileSync(join(template, path), 'utf8'), placeholders);
    return { path: targetOf(path), text };
  });
  const isThere = ({ path }: TemplateFile) => existsSync(join(root, path));
  const missing = files.filter((file) => !isThere(file));
  const kept = files.filter(isThere).map(({ path }) => path);
  const written = dryRun ? success(true) : await writeMissing(root, missing);
  return written.ok ? success({ written: missing.map(({ path }) => path), kept }) : written;
}

interface TemplateFile {
  readonly path: string;
  readonly text: string;
}

async function writeMissing(
  root: string,
  missing: readonly TemplateFile[],
): Promise<Result<true, NewFileProblem>> {
  const made = await madeWhole(root, missing);
  if (!made.ok) return made;
  if (made.value) return success(true);
  tidyFolders([dirname(root), ...templatePaths().map((path) => dirname(join(root, targetOf(path))))]);
  const isLast = ({ path }: TemplateFile) => path === 'package.json';
  for (const file of [...missing.filter((each) => !isLast(each)), ...missing.filter(isLast)]) {
    const written = await writeNewFile(root, file);
    if (!written.ok) return written;
  }
  return success(true);
}

async function madeWhole(
  root: string,
  files: readonly TemplateFile[],
): Promise<Result<boolean, NewFileProblem>> {
  try {
    return await makeFolder(
      root,
      files.map(({ path, text }) => [path, text]),
      root,
    );
  } catch (error) {
    return unwritable(root, error);
  }
}

/** npm leaves out files such as `.gitignore`, so in the template a dot at the start is written `_`. */
function targetOf(path: string): string {
  return path.replace(/^_/, '.');
}

/** Paths in the template. */
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
