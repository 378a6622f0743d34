import { join, resolve } from 'node:path';
import { exportPairings } from '../../export/export-pairings.ts';
import { type ExportedTable, exportRegistry, type FilePart } from '../../export/export-registry.ts';
import type { Progress } from '../../host/progress.ts';
import { writeParts } from '../../host/writing/write-parts.ts';
import { alignedCells } from '../../text/text-grid.ts';
import type { CliContext } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { openRegistry, type RegistryOptions } from '../open-registry.ts';

export interface ExportCommandOptions extends RegistryOptions {
  readonly out: string;
  readonly licence?: string;
  readonly today?: string;
  readonly policy?: string;
  readonly tables: boolean;
}

export async function runExport(
  folders: readonly string[],
  options: ExportCommandOptions,
  program: string,
  cli: CliContext,
  exit: Exit,
): Promise<void> {
  const { out, licence } = options;
  const { progress = () => {}, cwd } = cli;
  const opened = await openRegistry(cli, { ...options, registry: [...folders, ...options.registry] });
  if (!opened.ok) return exit.cannotRun(opened.error);
  const { registry, trust } = opened.value;
  const pairings = exportPairings(registry, options);
  if (!pairings.ok) return exit.cannotRun(pairings.error);
  const today = options.today ?? cli.today();
  const asked = { today, program, pairings: pairings.value, ...(licence !== undefined && { licence }) };
  const parts = exportRegistry(registry, asked);
  const tables: ExportedTable[] = [];
  const watched = watch(parts, progress, (all) => tables.push(...all));
  const written = await writeParts(watched, resolve(cwd, out), out, cwd, () => trust(today));
  progress('');
  if (!written.ok) return exit.cannotRun(written.error);
  cli.out(summary(tables, out));
}

/** The parts on their way, with a word on how far they are, and in the end what they were. */
function* watch(
  parts: ReturnType<typeof exportRegistry>,
  progress: Progress,
  ended: (tables: readonly ExportedTable[]) => void,
): Generator<FilePart> {
  for (let next = parts.next(); ; next = parts.next()) {
    if (next.done === true) return ended(next.value);
    progress(`Export: ${next.value.name} …`);
    yield next.value;
  }
}

function summary(tables: readonly ExportedTable[], out: string): string {
  const grid = alignedCells(
    [
      { heading: 'file', align: 'left' },
      { heading: 'rows', align: 'right' },
    ],
    tables.map(({ path, rows }) => [path, String(rows)]),
  );
  return [
    ...grid.map((row) => row.join('  ')),
    '',
    `${join(out, 'datapackage.json')} describes the columns, their units and keys.`,
    '',
  ].join('\n');
}
