import { join, resolve } from 'node:path';
import { syncFolder } from '../host/writing/sync-folder.ts';
import { formatSite } from '../site/format-site.ts';
import { counted } from '../text/words.ts';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';
import { openRegistry, type RegistryOptions } from './open-registry.ts';

export interface SiteOptions extends RegistryOptions {
  readonly out: string;
  readonly today?: string;
}

export async function runSite(options: SiteOptions, cli: CliContext, exit: Exit): Promise<void> {
  const opened = await openRegistry(cli, options);
  if (!opened.ok) return exit.cannotRun(opened.error);
  const { registry, trust } = opened.value;
  const today = options.today ?? cli.today();
  const { progress = () => {}, cwd } = cli;
  const files: (readonly [path: string, text: string])[] = [];
  for (const { path, text } of formatSite(registry, today)) {
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
