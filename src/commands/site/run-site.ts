import { dirname, join, relative, resolve, sep } from 'node:path';
import { configuredEditor } from '../../host/configured-registries.ts';
import { fileErrorCode } from '../../host/file-error.ts';
import { registryFolders } from '../../host/registry-folders.ts';
import { schemaPathFrom } from '../../host/schema-files.ts';
import { syncFolder } from '../../host/writing/sync-folder.ts';
import { failure, type Problem, type Result, success } from '../../result.ts';
import type { BenchOptions } from '../../site/bench/bench-files.ts';
import type { WebEditor } from '../../site/bench/web-editor.ts';
import { formatSite } from '../../site/format-site.ts';
import { counted } from '../../text/words.ts';
import type { CliContext } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { openRegistry, type RegistryOptions } from '../open-registry.ts';
import { cannotWatch, nobodyWatches } from '../watching.ts';

export interface SiteOptions extends RegistryOptions {
  readonly out: string;
  readonly today?: string;
  readonly watch?: boolean;
  readonly port: number;
}

export async function runSite(options: SiteOptions, cli: CliContext, exit: Exit): Promise<void> {
  if (options.watch === true) await serveSite(options, cli, exit);
  else await writeSite(options, cli, exit);
}

/** Writes the catalogue, serves it, and writes it again after every change of the registries, with the problems that are in the way. */
async function serveSite(options: SiteOptions, cli: CliContext, exit: Exit): Promise<void> {
  const { changes, serve, cwd } = cli;
  if (changes === undefined || serve === undefined) return exit.cannotRun(nobodyWatches);
  const folders = registryFolders(options.registry, cwd);
  if (!folders.ok) return exit.cannotRun(folders.error);
  const started = await attempt(() => changes(folders.value), cannotWatch);
  if (!started.ok) return exit.cannotRun(started.error);
  await writeSite(options, cli, exit);
  const served = await attempt(
    () => serve(resolve(cwd, options.out), options.port),
    (code) => cannotServe(options.port, code),
  );
  if (!served.ok) return exit.cannotRun(served.error);
  cli.err(`Served to this machine at ${served.value.address}. Waiting for changes; Ctrl+C ends it.\n`);
  const watched = await attempt(async () => {
    for await (const _ of started.value) await writeSite(options, cli, exit);
  }, cannotWatch);
  served.value.close();
  if (!watched.ok) exit.cannotRun(watched.error);
}

async function attempt<Value>(
  action: () => Promise<Value>,
  problemOf: (code: string) => Problem,
): Promise<Result<Value, Problem>> {
  try {
    return success(await action());
  } catch (error) {
    return failure(problemOf(fileErrorCode(error)));
  }
}

function cannotServe(port: number, code: string): Problem {
  return {
    code: 'cannotServe',
    message: `The catalogue cannot be served at port ${port} (${code})`,
    help: 'Name another port, such as `--port 0` for any that is free.',
  };
}

async function writeSite(options: SiteOptions, cli: CliContext, exit: Exit): Promise<void> {
  const folders = registryFolders(options.registry, cli.cwd);
  if (!folders.ok) return exit.cannotRun(folders.error);
  const webEditor = configuredEditor(cli.cwd);
  if (!webEditor.ok) return exit.cannotRun(webEditor.error);
  const opened = await openRegistry(cli, options);
  if (!opened.ok) return exit.cannotRun(opened.error);
  const { registry, trust } = opened.value;
  const today = options.today ?? cli.today();
  const { progress = () => {}, cwd } = cli;
  const bench = benchOptions(folders.value.at(-1) ?? cwd, cwd, webEditor.value);
  const files: (readonly [path: string, text: string])[] = [];
  for (const { path, text } of formatSite(registry, today, bench)) {
    files.push([path, text]);
    progress(`Catalogue: ${counted(files.length, 'file')} …`);
  }
  progress('');
  const trusted = trust(today);
  if (!trusted.ok) return exit.cannotRun(trusted.error);
  const written = await syncFolder(files, resolve(cwd, options.out), options.out, cwd);
  if (!written.ok) return exit.cannotRun(written.error);
  const { changed, removed } = written.value;
  cli.out(
    `${counted(files.length, 'file')} under ${options.out}: ${changed} written, ${files.length - changed} as they were, ${removed} removed. Open ${join(options.out, 'index.html')}.\n`,
  );
}

/** How the bench page names the files of the team's own registry. */
function benchOptions(own: string, cwd: string, webEditor: WebEditor | null): BenchOptions {
  const slashed = (path: string) => path.replaceAll('\\', '/');
  const schemas = dirname(schemaPathFrom(own, own, 'trial.schema.json'));
  return {
    setting: { folder: slashed(relative(cwd, own)), schemas: slashed(schemas), webEditor },
    isOwn: (path) => resolve(cwd, path).startsWith(own + sep),
  };
}
