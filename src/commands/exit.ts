import type { Problem } from '../result.ts';
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
