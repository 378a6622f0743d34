import { dirname, join, relative, resolve, sep } from 'node:path';
import { configuredEditor } from '../../host/configured-registries.ts';
import { fileErrorCode } from '../../host/file-error.ts';
import type { Progress } from '../../host/progress.ts';
import { registryFolders } from '../../host/registry-folders.ts';
import { schemaPathFrom } from '../../host/schema-files.ts';
import { holdsDigest, syncFolder } from '../../host/writing/sync-folder.ts';
import { findProfile } from '../../registry/find-profile.ts';
import type { ResultMemory } from '../../registry/result-memory.ts';
import { failure, type Problem, type Result, success } from '../../result.ts';
import type { BenchOptions } from '../../site/bench/bench-files.ts';
import type { WebEditor } from '../../site/bench/web-editor.ts';
import { siteEntries } from '../../site/format-site.ts';
import type { SiteEntry } from '../../site/site-file.ts';
import { type FolderSiteMemory, folderSiteMemory, noSiteMemory } from '../../site/site-memory.ts';
import { counted } from '../../text/words.ts';
import type { CliContext } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { misremembered, openRegistry, type RegistryOptions } from '../open-registry.ts';
import { cannotWatch, nobodyWatches } from '../watching.ts';

export interface SiteOptions extends RegistryOptions {
  readonly out: string;
  readonly today?: string;
  readonly watch?: boolean;
  /** House rules under which pairings have pages; none: all. */
  readonly policy: readonly string[];
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
  const { registry, memory, trust } = opened.value;
  const unknown = options.policy.map((id) => findProfile(registry, 'policy', id)).find(({ ok }) => !ok);
  if (unknown?.ok === false) return exit.cannotRun(unknown.error);
  const today = options.today ?? cli.today();
  const { progress = () => {}, cwd } = cli;
  const bench = benchOptions(folders.value.at(-1) ?? cwd, cwd, webEditor.value);
  const folder = resolve(cwd, options.out);
  const known = memory.isKept ? pagesIn(folder, memory) : null;
  const entries = siteEntries(registry, today, { bench, policies: options.policy }, known ?? noSiteMemory);
  const written = await syncFolder(watched(entries, progress), folder, options.out, cwd, () => {
    const trusted = trust(today);
    return trusted.ok && known !== null ? trustPages(known, today) : trusted;
  });
  progress('');
  if (!written.ok) return exit.cannotRun(written.error);
  known?.keep();
  const { files, changed, removed } = written.value;
  cli.out(
    `${counted(files, 'file')} under ${options.out}: ${changed} written, ${files - changed} as they were, ${removed} removed. Open ${join(options.out, 'index.html')}.\n`,
  );
}

/** What earlier runs have written into a folder, as far as it still stands there. */
function pagesIn(folder: string, memory: ResultMemory): FolderSiteMemory {
  return folderSiteMemory(memory, folder, ({ path, digest }) => holdsDigest(folder, path, digest));
}

/** Whether pages that were left as they are can be, as far as a few that are made again tell. */
function trustPages(known: FolderSiteMemory, today: string): Result<null, Problem<'misremembered'>> {
  const wrong = known.differing(today);
  if (wrong.length === 0) return success(null);
  known.keep();
  return misremembered(
    `The page that an earlier run has left of ${wrong.join(', ')} is not what the registry gives now`,
  );
}

function* watched(entries: Iterable<SiteEntry>, progress: Progress): Generator<SiteEntry> {
  let count = 0;
  for (const entry of entries) {
    count += 1;
    if (count % progressStep === 0) progress(`Catalogue: ${counted(count, 'file')} …`);
    yield entry;
  }
}

/** Files from one word on how far it is to the next. */
const progressStep = 20;

/** How the bench page names the files of the team's own registry. */
function benchOptions(own: string, cwd: string, webEditor: WebEditor | null): BenchOptions {
  const slashed = (path: string) => path.replaceAll('\\', '/');
  const schemas = dirname(schemaPathFrom(own, own, 'trial.schema.json'));
  return {
    setting: { folder: slashed(relative(cwd, own)), schemas: slashed(schemas), webEditor },
    isOwn: (path) => resolve(cwd, path).startsWith(own + sep),
  };
}
