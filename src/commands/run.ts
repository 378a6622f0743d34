import { Command, CommanderError } from 'commander';
import { type CliContext, type ExitStatus, exitStatus, withSafeOutput } from './cli-context.ts';
import type { MakeCommand } from './commands.ts';
import { rememberExit } from './exit.ts';

/** Runs the command line `meltbounds ARGUMENTS…` and returns its exit status. */
export async function run(
  args: readonly string[],
  version: string,
  context: CliContext,
): Promise<ExitStatus> {
  const cli = withSafeOutput(context);
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

Exit status of every command: 0 no problems found; 1 problems found; 2 the command cannot run; 70 a fault of the program itself.
NO_COLOR turns colours off, FORCE_COLOR on.`,
    );
  const { commands } = await import('./commands.ts');
  for (const make of wanted(args, commands)) program.addCommand(make(cli, exit));
  for (const command of [program, ...program.commands]) {
    command.exitOverride().configureOutput({ writeOut: (text) => cli.out(text), writeErr: cli.err });
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
function wanted(
  [name = '']: readonly string[],
  commands: Readonly<Record<string, MakeCommand>>,
): MakeCommand[] {
  if (name === '--version' || name === '-V') return [];
  const named = Object.hasOwn(commands, name) && !overarching.has(name) ? commands[name] : undefined;
  return named === undefined ? Object.values(commands) : [named];
}
