import { join, resolve } from 'node:path';
import type { Progress } from '../../host/progress.ts';
import { writeFiles } from '../../host/writing/write-files.ts';
import type { Registry } from '../../registry/registry.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import { deriveEach, everyPairing, type FullRequest } from '../../tables/derive/every-pairing.ts';
import type { SpeedTable } from '../../tables/derive/speed-table.ts';
import { type NamedFile, tableFiles } from '../../tables/write/table-files.ts';
import {
  type OmittedPairing,
  type TabledPairing,
  type TableIndex,
  tabledPairing,
} from '../../tables/write/table-index.ts';
import { formatTableIndexAsCsv } from '../../tables/write/table-index-as-csv.ts';
import { formatTableIndexAsHtml } from '../../tables/write/table-index-as-html.ts';
import { formatTableIndexAsJson } from '../../tables/write/table-index-as-json.ts';
import { unfinishedIndex } from '../../tables/write/unfinished-index.ts';
import { problemLine } from '../../text/problem-text.ts';
import { alignedCells } from '../../text/text-grid.ts';
import type { CliContext } from '../cli-context.ts';
import type { OpenRegistry } from '../open-registry.ts';
import { filledFile, type TemplateFile } from './read-template-file.ts';

interface AllTablesRequest {
  /** Folder for the files, as the user wrote it. */
  readonly out: string;
  readonly policy?: string;
  readonly template: TemplateFile | null;
  /** Date by which the evidence is judged, YYYY-MM-DD. */
  readonly today: string;
}

/**
 * Writes the tables of every pairing into folders of their own, then the index, which says until then that they are unfinished. What
 * it returns is to be printed.
 * Problems: an unknown policy, a template that cannot be filled, no pairing with a table, a wrong result of an earlier
 * run; then the index goes on saying so, if there is one.
 */
export async function writeAllTables(
  { registry, trust }: OpenRegistry,
  request: AllTablesRequest,
  { cwd, progress = () => {} }: Pick<CliContext, 'cwd' | 'progress'>,
): Promise<Result<string, Problem>> {
  const requests = everyPairing(registry, request.policy);
  if (!requests.ok) return requests;
  const root = resolve(cwd, request.out);
  const index = await writeEach(registry, requests.value, request, { cwd, progress });
  progress('');
  if (!index.ok) return index;
  const trusted = trust(request.today);
  if (!trusted.ok) return trusted;
  if (index.value.tabled.length === 0) return nothing(index.value);
  const written = await writeFiles(indexFiles(index.value), root, request.out, cwd);
  return written.ok ? success(summary(index.value, request.out)) : written;
}

async function writeEach(
  registry: Registry,
  requests: readonly FullRequest[],
  { out, template, today }: AllTablesRequest,
  { cwd, progress }: { readonly cwd: string; readonly progress: Progress },
): Promise<Result<TableIndex, Problem>> {
  const tabled: TabledPairing[] = [];
  const omitted: OmittedPairing[] = [];
  for (const { request, table } of deriveEach(registry, requests, today)) {
    if (!table.ok) {
      omitted.push({ ...request, reason: problemLine(table.error) });
      continue;
    }
    progress(`Tables: ${tabled.length + omitted.length} of ${requests.length} pairings …`);
    const files = filesOf(table.value, template);
    if (!files.ok) return files;
    if (tabled.length === 0) {
      const marked = await writeFiles(unfinishedIndex(), resolve(cwd, out), out, cwd);
      if (!marked.ok) return marked;
    }
    const names = files.value.map(([name]) => name);
    const entry = tabledPairing(request, table.value, names);
    const written = await writeFiles(files.value, join(resolve(cwd, out), entry.folder), out, cwd);
    if (!written.ok) return written;
    tabled.push(entry);
  }
  return success({ tabled, omitted });
}

function filesOf(table: SpeedTable, template: TemplateFile | null): Result<NamedFile[], Problem> {
  if (template === null) return success(tableFiles(table));
  const filled = filledFile(template, table);
  return filled.ok ? success([filled.value]) : filled;
}

function indexFiles(index: TableIndex): NamedFile[] {
  return [
    ['index.html', formatTableIndexAsHtml(index)],
    ['index.json', formatTableIndexAsJson(index)],
    ['index.csv', formatTableIndexAsCsv(index)],
  ];
}

function nothing({ omitted: [first] }: TableIndex) {
  return first === undefined
    ? refusal(
        'noPairing',
        'No table follows: the registry holds no machine with a nozzle, or no filament',
        'Add them.',
      )
    : refusal(
        'noTable',
        'No pairing of the registry has a table',
        `The first, ${first.filament} on ${first.machine}: ${first.reason}`,
      );
}

/** Pairings with and without a table by policy, in columns that line up, and where they are. */
function summary({ tabled, omitted }: TableIndex, out: string): string {
  const policies = [...new Set([...tabled, ...omitted].map(({ policy }) => policy))];
  const count = (entries: readonly { readonly policy: string }[], policy: string) =>
    String(entries.filter((entry) => entry.policy === policy).length);
  const grid = alignedCells(
    [
      { heading: 'policy', align: 'left' },
      { heading: 'tables', align: 'right' },
      { heading: 'left out', align: 'right' },
    ],
    policies.map((policy) => [policy, count(tabled, policy), count(omitted, policy)]),
  );
  const files = tabled.reduce((sum, entry) => sum + entry.files.length, 0);
  return [
    ...grid.map((row) => row.join('  ')),
    '',
    `${files} files under ${out}, listed in ${join(out, 'index.html')} (also index.json, index.csv), with the reason of every pairing left out.`,
    '',
  ].join('\n');
}
