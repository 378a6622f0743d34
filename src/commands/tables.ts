import { join, resolve } from 'node:path';
import { Command, Option } from 'commander';
import { loadRegistry } from '../registry/load-registry.ts';
import { deriveTables } from '../tables/derive-tables.ts';
import { explainRow } from '../tables/explain-row.ts';
import { findRow } from '../tables/row-address.ts';
import { writeCsv } from '../tables/write-csv.ts';
import { writeHtml } from '../tables/write-html.ts';
import { writeJson } from '../tables/write-json.ts';
import { writeMarkdown } from '../tables/write-markdown.ts';
import type { Finish } from './finish.ts';
import { registryFolders } from './registry-folders.ts';
import { registryOption } from './shared-options.ts';
import type { Surroundings } from './surroundings.ts';
import { writeTables } from './write-tables.ts';

interface TablesOptions {
  readonly nozzle?: string;
  readonly policy?: string;
  readonly format: keyof typeof writers;
  readonly out?: string;
  readonly explain?: string;
  readonly registry: readonly string[];
}

export function tablesCommand(surroundings: Surroundings, finish: Finish): Command {
  return new Command('tables')
    .summary('derive speed and temperature tables for a machine and a filament')
    .description(
      'Derives, for every feature, layer height and line width, the speed that the limits allow, what holds it there, and the nozzle temperature that feeds it.',
    )
    .argument('<machine>', 'id of the machine, such as brackwater/lantern')
    .argument('<filament>', 'id of the filament, such as ashgrove/stagecraft-pla')
    .option(
      '--nozzle <id>',
      'nozzle of the machine (default: one with a measured limit, else the first that fits)',
    )
    .option('--policy <id>', 'house rules to apply (default: the only ones of the registry)')
    .addOption(
      new Option('--format <format>', 'form of the table on standard output')
        .choices(Object.keys(writers))
        .default('markdown'),
    )
    .option(
      '--out <folder>',
      'write CSV with its metadata (speeds, conditions), JSON, Markdown and an HTML page there instead',
    )
    .addOption(
      new Option(
        '--explain <row>',
        'show the arithmetic of one row instead, with the source of every number',
      ).conflicts(['out', 'format']),
    )
    .addOption(registryOption())
    .addHelpText(
      'after',
      `
Examples:
  meltbounds tables brackwater/lantern ashgrove/stagecraft-pla --policy workshop
  meltbounds tables brackwater/lantern ashgrove/stagecraft-pla --nozzle hs-0.6 --policy workshop --out out
  meltbounds tables brackwater/lantern ashgrove/stagecraft-pla --policy workshop --format html > wall.html
  meltbounds tables brackwater/lantern ashgrove/stagecraft-pla --policy workshop --explain infill@0.2x0.44

Exit status: 0 table written, 2 it cannot be derived.`,
    )
    .action(async (machine: string, filament: string, options: TablesOptions) => {
      const folders = registryFolders(options.registry, surroundings.cwd);
      if (!folders.ok) return finish.cannotRun(folders.error);
      const { registry } = loadRegistry(folders.value, surroundings.cwd);
      const table = deriveTables(registry, { machine, filament, ...chosen(options) });
      if (!table.ok) return finish.cannotRun(table.error);
      if (options.explain !== undefined) {
        const row = findRow(table.value, options.explain);
        return row.ok
          ? surroundings.out(explainRow(registry, table.value, row.value))
          : finish.cannotRun(row.error);
      }
      if (options.out === undefined) return surroundings.out(writers[options.format](table.value));
      for (const path of await writeTables(table.value, resolve(surroundings.cwd, options.out))) {
        surroundings.out(`${join(options.out, path)}\n`);
      }
    });
}

const writers = { markdown: writeMarkdown, csv: writeCsv, json: writeJson, html: writeHtml } as const;

function chosen({ nozzle, policy }: TablesOptions): { nozzle?: string; policy?: string } {
  return { ...(nozzle !== undefined && { nozzle }), ...(policy !== undefined && { policy }) };
}
