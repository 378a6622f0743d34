import type { Problem } from '../result.ts';
import { oneLine } from '../text/one-line.ts';
import { printable } from '../text/printable.ts';
import { problemText } from '../text/problem-text.ts';
import { inPrint } from '../units/in-print.ts';
import { type CliContext, type ExitStatus, exitStatus } from './cli-context.ts';

/** How a command ends: with a status, and in words where it could not run. */
export interface Exit {
  readonly with: (status: ExitStatus) => void;
  readonly cannotRun: (problem: Pick<Problem, 'message' | 'help'>) => void;
}

/** An exit that remembers the status for the caller. */
export function rememberExit(cli: CliContext): { exit: Exit; status: () => ExitStatus } {
  let status: ExitStatus = exitStatus.clean;
  const exit: Exit = {
    with: (given) => {
      status = given;
    },
    cannotRun: (problem) => {
      cli.err(`${inPrint(problemText(problem))}\n`);
      status = exitStatus.cannotRun;
    },
  };
  return { exit, status: () => status };
}

/** Exit status of a fault of the program itself (EX_SOFTWARE of the BSD sysexits). */
export const faultStatus = 70;

/** One line that says where the program went wrong, for whoever can mend it. */
export function faultText(error: unknown, version: string): string {
  const what = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  const [, place] = (error instanceof Error && error.stack?.match(/\n\s+at ([^\n]*)/)) || [];
  const where = place === undefined ? '' : ` at ${printable(place)}`;
  const found = `${oneLine(what)}${where}`;
  return `meltbounds ${version} has a fault of its own: ${found}. Please report this line with the command that you typed.\n`;
}
