import { Command, CommanderError } from 'commander';
import { type CliContext, type ExitStatus, exitStatus } from './cli-context.ts';
import { type Exit, rememberExit } from './exit.ts';

type MakeCommand = (cli: CliContext, exit: Exit) => Command;

/** The commands in the order of the help; each is loaded only when it is asked for. */
const commands: Readonly<Record<string, () => Promise<MakeCommand>>> = {
  check: async () => (await import('./check/check.ts')).checkCommand,
  reduce: async () => (await import('./reduce/reduce.ts')).reduceCommand,
  tables: async () => (await import('./tables/tables.ts')).tablesCommand,
  init: async () => (await import('./init.ts')).initCommand,
  new: async () => (await import('./new/new.ts')).newCommand,
  diff: async () => (await import('./diff/diff.ts')).diffCommand,
  plan: async () => (await import('./plan.ts')).planCommand,
  index: async () => (await import('./registry-index.ts')).indexCommand,
  match: async () => (await import('./match.ts')).matchCommand,
  compare: async () => (await import('./compare.ts')).compareCommand,
  claims: async () => (await import('./claims.ts')).claimsCommand,
  migrate: async () => (await import('./migrate.ts')).migrateCommand,
  rules: async () => (await import('./rules.ts')).rulesCommand,
  completion: async () => (await import('./completion/completion.ts')).completionCommand,
};

/** Runs the command line `meltbounds ARGUMENTS…` and returns its exit status. */
export async function run(args: readonly string[], version: string, cli: CliContext): Promise<ExitStatus> {
  const { exit, status } = rememberExit(cli);
  const program = new Command('meltbounds')
    .description(
      'A registry of measured limits of material-extrusion machines and filaments: checks profiles, reduces bench trials to limits, derives speed and temperature tables.',
    )
    .version(version)
    .addHelpText(
      'after',
      `
Examples:
  meltbounds check
  meltbounds tables brackwater/lantern ashgrove/stagecraft-pla --policy workshop
  meltbounds help reduce

Exit status of every command: 0 no problems found; 1 problems found; 2 the command cannot run.
NO_COLOR turns colours off, FORCE_COLOR on.`,
    );
  for (const make of await Promise.all(wanted(args).map((load) => load()))) {
    program.addCommand(make(cli, exit));
  }
  for (const command of [program, ...program.commands]) {
    command.exitOverride().configureOutput({ writeOut: cli.out, writeErr: cli.err });
  }
  try {
    await program.parseAsync([...args], { from: 'user' });
    return status();
  } catch (error) {
    // Commander reports `--help`, `--version` and wrong usage this way, and has printed its message already.
    if (error instanceof CommanderError)
      return error.exitCode === 0 ? exitStatus.clean : exitStatus.cannotRun;
    throw error;
  }
}

/** Commands that speak of all others. */
const overarching: ReadonlySet<string> = new Set(['help', 'completion']);

/**
 * Only the command that is named, and none for the version; all of them where none is named, for the help, for
 * suggestions and for completion.
 */
function wanted([name = '']: readonly string[]): (() => Promise<MakeCommand>)[] {
  if (name === '--version' || name === '-V') return [];
  const named = Object.hasOwn(commands, name) && !overarching.has(name) ? commands[name] : undefined;
  return named === undefined ? Object.values(commands) : [named];
}
