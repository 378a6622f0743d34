import { Command, Option } from 'commander';
import { valueEscapes } from '../../text/escape.ts';
import type { CliContext } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { rememberOption } from '../open-memory.ts';
import { registryOption, tableFormats, todayOption } from '../shared-options.ts';
import type { TablesOptions } from './run-tables.ts';
import { sizeArgument, temperatureArgument } from './table-arguments.ts';

export function tablesCommand(cli: CliContext, exit: Exit): Command {
  return new Command('tables')
    .summary('derive speed and temperature tables for a machine and a filament')
    .description(
      'Derives, for one nozzle temperature, the speed that the limits allow for every feature, layer height and line width, what limits it there, and what to set besides.',
    )
    .argument('[machine]', 'id of the machine, such as brackwater/lantern; left out with --all')
    .argument('[filament]', 'id of the filament, such as ashgrove/stagecraft-pla; left out with --all')
    .option(
      '--nozzle <id>',
      'nozzle of the machine (default: one with a measured limit, else the first that fits)',
    )
    .option('--policy <id>', 'house rules to apply (default: the only ones of the registry)')
    .addOption(
      new Option(
        '--temperature <quantity>',
        'nozzle temperature of the table, inside of what was tested, such as "230 Cel" (default: chosen by the policy)',
      ).argParser(temperatureArgument),
    )
    .addOption(
      new Option(
        '--all-temperatures',
        'one table for each tested temperature, and which of them the policy would take',
      ).conflicts(['temperature', 'explain', 'template', 'all']),
    )
    .addOption(
      new Option(
        '--layer-height <size>',
        'layer height in place of those of the policy, such as "0.15 mm", or "25 %" of the nozzle; may be repeated',
      ).argParser(sizeArgument),
    )
    .addOption(
      new Option(
        '--line-width <size>',
        'line width in place of those of the policy, such as "0.45 mm", or "110 %" of the nozzle; may be repeated',
      ).argParser(sizeArgument),
    )
    .option('--batch <name>', 'batch of the filament that is printed (default: limits of every batch count)')
    .addOption(
      new Option('--format <format>', 'form of the table on standard output')
        .choices(tableFormats)
        .default('text'),
    )
    .option(
      '--out <folder>',
      'write CSV with its metadata (speeds, conditions), JSON, Markdown, an HTML page and a workbook there instead',
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
        'format that values in the template are escaped for (default: by its name, such as xml for sheet.xml)',
      ).choices([...valueEscapes]),
    )
    .addOption(
      new Option(
        '--all',
        'write the tables of every machine, nozzle and filament under each policy, or the one of --policy, into the folder of --out, with an index',
      ).conflicts(['nozzle', 'format', 'explain', 'temperature', 'layerHeight', 'lineWidth', 'batch']),
    )
    .addOption(todayOption())
    .addOption(registryOption())
    .addOption(rememberOption())
    .addHelpText(
      'after',
      `
Examples:
  meltbounds tables brackwater/lantern ashgrove/stagecraft-pla --policy workshop
  meltbounds tables brackwater/lantern ashgrove/stagecraft-pla --nozzle hs-0.6 --policy workshop --out out
  meltbounds tables brackwater/lantern ashgrove/stagecraft-pla --policy workshop --temperature "225 Cel"
  meltbounds tables brackwater/lantern ashgrove/stagecraft-pla --policy workshop --layer-height "0.25 mm" --line-width "120 %"
  meltbounds tables brackwater/lantern ashgrove/stagecraft-pla --policy workshop --format html > wall.html
  meltbounds tables brackwater/lantern ashgrove/stagecraft-pla --policy workshop --format xlsx > table.xlsx
  meltbounds tables brackwater/lantern ashgrove/stagecraft-pla --policy workshop --explain infill@0.2x0.44
  meltbounds tables brackwater/lantern ashgrove/stagecraft-pla --policy workshop --template sheet.ini
  meltbounds tables --all --out tables

Exit status: 0 table written; 2 no table, for example because no melt flow limit is known.`,
    )
    .action(
      async (
        machine: string | undefined,
        filament: string | undefined,
        options: TablesOptions,
        command: Command,
      ) => {
        const { runTables } = await import('./run-tables.ts');
        return runTables(machine, filament, options, command, cli, exit);
      },
    );
}
