import { loadFolders } from '../host/load-registry.ts';
import { type ReadProblem, readText } from '../host/read-text.ts';
import { readRegistryFile, readRegistryFiles } from '../host/registry-files.ts';
import { registryFolder } from '../host/registry-folders.ts';
import { writeFile } from '../host/writing/write-files.ts';
import { readRegistryIndex } from '../registry/mirror/read-registry-index.ts';
import {
  formatRegistryIndexAsJson,
  type IndexedFile,
  indexRegistry,
} from '../registry/mirror/registry-index.ts';
import { type IndexDifference, verifyIndex } from '../registry/mirror/verify-index.ts';
import { failure, type Problem, type Result } from '../result.ts';
import { printable } from '../text/printable.ts';
import { pathLines } from '../text/terminal-text.ts';
import { counted } from '../text/words.ts';
import { type CliContext, exitStatus } from './cli-context.ts';
import type { Exit } from './exit.ts';

export interface IndexOptions {
  readonly out?: string;
  readonly verify?: string;
}

export async function runIndex(
  folder: string,
  options: IndexOptions,
  cli: CliContext,
  exit: Exit,
): Promise<void> {
  const found = registryFolder(folder, cli.cwd);
  if (!found.ok) return exit.cannotRun(found.error);
  return options.verify === undefined
    ? write(found.value, options.out, cli, exit)
    : verify(found.value, options.verify, cli, exit);
}

async function write(folder: string, out: string | undefined, cli: CliContext, exit: Exit): Promise<void> {
  const loaded = loadFolders([folder], cli.cwd);
  const broken = new Set(
    loaded.findings.filter(({ severity }) => severity === 'error').map(({ file }) => file),
  );
  if (broken.size > 0) {
    for (const file of broken) cli.err(`${printable(file)} has errors of form.\n`);
    cli.err('No index was written: run `meltbounds check`, and fix what it finds.\n');
    return exit.with(exitStatus.findings);
  }
  const text = formatRegistryIndexAsJson(indexRegistry(loaded));
  if (out === undefined) return cli.out(text);
  const written = await writeFile(out, text, cli.cwd);
  if (!written.ok) return exit.cannotRun(written.error);
  cli.out(pathLines([out]));
}

function verify(folder: string, indexPath: string, cli: CliContext, exit: Exit): void {
  const root = { folder, shown: folder };
  const indexed = readIndex(indexPath, cli.cwd);
  if (!indexed.ok) {
    exit.cannotRun(indexed.error);
    return;
  }
  const present = readRegistryFiles(root).map((file) =>
    file.ok ? file.source.relativePath : file.relativePath,
  );
  const differences = verifyIndex(indexed.value, present, (path) => {
    const file = readRegistryFile(root, path);
    if (file.ok) return file.source.digest;
    return file.problem === 'missing' ? null : file.problem;
  });
  cli.out(differencesText(differences, indexed.value.length));
  exit.with(differences.length === 0 ? exitStatus.clean : exitStatus.findings);
}

/** An index has some 150 bytes a profile. */
const indexKind = { name: 'index', mostBytes: 1 << 26 } as const;

function readIndex(
  path: string,
  cwd: string,
): Result<readonly IndexedFile[], ReadProblem | Problem<'noIndex'>> {
  const text = readText(path, cwd, indexKind);
  if (!text.ok) return text;
  const files = readRegistryIndex(text.value);
  if (files.ok) return files;
  return failure({ ...files.error, message: `${printable(path)}: ${files.error.message}` });
}

function differencesText(differences: readonly IndexDifference[], indexed: number): string {
  const lines = differences.map(
    ({ path, difference }) => `${difference.padEnd('missing'.length)}  ${printable(path)}\n`,
  );
  const count = (wanted: IndexDifference['difference']) =>
    differences.filter(({ difference }) => difference === wanted).length;
  const summary =
    differences.length === 0
      ? 'the same as in the index'
      : `${count('missing')} missing, ${count('extra')} extra, ${count('altered')} altered`;
  return `${lines.join('')}${counted(indexed, 'file')}: ${summary}.\n`;
}
