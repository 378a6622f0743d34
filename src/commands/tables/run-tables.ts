import type { Command } from 'commander';
import { type Problem, type Result, success } from '../../result.ts';
import type { AskedSize } from '../../tables/derive/beads.ts';
import type { TableRequest } from '../../tables/derive/derive-tables.ts';
import type { ValueEscape } from '../../text/escape.ts';
import type { CliContext } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { openRegistry, type RegistryOptions } from '../open-registry.ts';
import type { TableFormat } from '../shared-options.ts';
import { usage } from '../usage.ts';
import { readTemplateFile, type TemplateFile } from './read-template-file.ts';
import { showTables } from './show-tables.ts';
import { writeAllTables } from './write-all-tables.ts';

export interface TablesOptions extends RegistryOptions {
  readonly nozzle?: string;
  readonly policy?: string;
  readonly temperature?: number;
  readonly allTemperatures?: true;
  readonly layerHeight?: readonly AskedSize[];
  readonly lineWidth?: readonly AskedSize[];
  readonly batch?: string;
  readonly format: TableFormat;
  readonly out?: string;
  readonly explain?: string;
  readonly all?: true;
  readonly template?: string;
  readonly escape?: ValueEscape;
  readonly today?: string;
}

export async function runTables(
  machine: string | undefined,
  filament: string | undefined,
  options: TablesOptions,
  command: Command,
  cli: CliContext,
  exit: Exit,
): Promise<void> {
  const template = templateOf(options, cli.cwd);
  if (!template.ok) return exit.cannotRun(template.error);
  const asked = askedPairing(machine, filament, options, command);
  if (!asked.ok) return exit.cannotRun(asked.error);
  const opened = await openRegistry(cli, options);
  if (!opened.ok) return exit.cannotRun(opened.error);
  const today = options.today ?? cli.today();
  const way = { ...options, today, template: template.value, cwd: cli.cwd, terminal: cli };
  const shown =
    asked.value === null
      ? await writeAllTables(opened.value, { ...way, out: options.out ?? '' }, cli)
      : await showTables(opened.value, asked.value, way);
  if (!shown.ok) return exit.cannotRun(shown.error);
  if (typeof shown.value === 'string') return cli.out(shown.value);
  if (cli.terminalColumns !== undefined) return exit.cannotRun(noTextForTerminals);
  cli.outBytes(shown.value);
}

const noTextForTerminals: Problem = {
  code: 'noText',
  message: 'A workbook is no text that a terminal could show',
  help: 'Send it into a file, with > table.xlsx, or write every form into a folder with --out.',
};

/** The pairing that the user names; null for all of them. */
function askedPairing(
  machine: string | undefined,
  filament: string | undefined,
  options: TablesOptions,
  command: Command,
): Result<TableRequest | null, Problem> {
  const { all, out } = options;
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
    ...askedSettings(options),
  });
}

function askedSettings(options: TablesOptions): Omit<TableRequest, 'machine' | 'filament'> {
  const { nozzle, policy, temperature, layerHeight, lineWidth, batch } = options;
  return {
    ...(nozzle !== undefined && { nozzle }),
    ...(policy !== undefined && { policy }),
    ...(temperature !== undefined && { temperature }),
    ...(layerHeight !== undefined && { layerHeights: layerHeight }),
    ...(lineWidth !== undefined && { lineWidths: lineWidth }),
    ...(batch !== undefined && { batch }),
  };
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
