import { Command, Option } from 'commander';
import { loadRegistry } from '../../host/load-registry.ts';
import type { PairingRequest } from '../../knowledge/pairing.ts';
import { type Problem, type Result, success } from '../../result.ts';
import { type ValueEscape, valueEscapes } from '../../text/escape.ts';
import type { CliContext } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { registryOption, todayOption } from '../shared-options.ts';
import { usage } from '../usage.ts';
import { readTemplateFile, type TemplateFile } from './read-template-file.ts';
import { showTables, tableWriters } from './show-tables.ts';
import { writeAllTables } from './write-all-tables.ts';

interface TablesOptions {
  readonly nozzle?: string;
  readonly policy?: string;
  readonly format: keyof typeof tableWriters;
  readonly out?: string;
  readonly explain?: string;
  readonly all?: true;
  readonly template?: string;
  readonly escape?: ValueEscape;
  readonly today?: string;
  readonly registry: readonly string[];
}

export function tablesCommand(cli: CliContext, exit: Exit): Command {
  return new Command('tables')
    .summary('derive speed and temperature tables for a machine and a filament')
    .description(
      'Derives, for every feature, layer height and line width, the speed that the limits allow, what limits it there, and the nozzle temperature that feeds it.',
    )
    .argument('[machine]', 'id of the machine, such as brackwater/lantern; left out with --all')
    .argument('[filament]', 'id of the filament, such as ashgrove/stagecraft-pla; left out with --all')
    .option(
      '--nozzle <id>',
      'nozzle of the machine (default: one with a measured limit, else the first that fits)',
    )
    .option('--policy <id>', 'house rules to apply (default: the only ones of the registry)')
    .addOption(
      new Option('--format <format>', 'form of the table on standard output')
        .choices(Object.keys(tableWriters))
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
      ).conflicts(['out', 'format', 'template']),
    )
    .addOption(
      new Option(
        '--template <file>',
        'fill your own Mustache template instead, such as examples/templates/wall.txt; see docs/templates.md',
      ).conflicts(['format']),
    )
    .addOption(
      new Option(
        '--escape <target>',
        'what the values in the template must be safe for (default: by its name, such as xml for sheet.xml)',
      ).choices([...valueEscapes]),
    )
    .addOption(
      new Option(
        '--all',
        'write the tables of every machine, nozzle and filament under each policy, or the one of --policy, into the folder of --out, with an index',
      ).conflicts(['nozzle', 'format', 'explain']),
    )
    .addOption(todayOption())
    .addOption(registryOption())
    .addHelpText(
      'after',
      `
Examples:
  meltbounds tables brackwater/lantern ashgrove/stagecraft-pla --policy workshop
  meltbounds tables brackwater/lantern ashgrove/stagecraft-pla --nozzle hs-0.6 --policy workshop --out out
  meltbounds tables brackwater/lantern ashgrove/stagecraft-pla --policy workshop --format html > wall.html
  meltbounds tables brackwater/lantern ashgrove/stagecraft-pla --policy workshop --explain infill@0.2x0.44
  meltbounds tables brackwater/lantern ashgrove/stagecraft-pla --policy workshop --template sheet.ini
  meltbounds tables --all --out tables

Exit status: 0 table written, 2 it cannot be derived.`,
    )
    .action(
      async (
        machine: string | undefined,
        filament: string | undefined,
        options: TablesOptions,
        command: Command,
      ) => {
        const template = templateOf(options, cli.cwd);
        if (!template.ok) return exit.cannotRun(template.error);
        const asked = askedPairing(machine, filament, options, command);
        if (!asked.ok) return exit.cannotRun(asked.error);
        const loaded = loadRegistry(options.registry, cli.cwd);
        if (!loaded.ok) return exit.cannotRun(loaded.error);
        const { registry } = loaded.value;
        const today = options.today ?? cli.today();
        const way = { ...options, today, template: template.value, cwd: cli.cwd };
        const shown =
          asked.value === null
            ? await writeAllTables(registry, { ...way, out: options.out ?? '' }, cli)
            : await showTables(registry, asked.value, way);
        return shown.ok ? cli.out(shown.value) : exit.cannotRun(shown.error);
      },
    );
}

/** The pairing that the user names; null for all of them. */
function askedPairing(
  machine: string | undefined,
  filament: string | undefined,
  { all, out, nozzle, policy }: TablesOptions,
  command: Command,
): Result<PairingRequest | null, Problem> {
  if (all === true) {
    if (machine !== undefined) return usage('--all makes the tables of every pairing', 'Name no machine.');
    return out === undefined
      ? usage('--all writes many files', 'Name a folder for them, such as --out tables.')
      : success(null);
  }
  if (machine === undefined || filament === undefined) {
    const missing = machine === undefined ? 'machine' : 'filament';
    return command.error(`error: missing required argument '${missing}' (or --all for every pairing)`);
  }
  return success({
    ...{ machine, filament },
    ...(nozzle !== undefined && { nozzle }),
    ...(policy !== undefined && { policy }),
  });
}

function templateOf(
  { template, escape: target }: TablesOptions,
  cwd: string,
): Result<TemplateFile | null, Problem> {
  if (template !== undefined) return readTemplateFile(template, cwd, target);
  return target === undefined
    ? success(null)
    : usage('--escape says how a template is filled', 'Name one with --template.');
}
