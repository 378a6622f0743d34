import { type CliContext, type ExitStatus, exitStatus } from './cli-context.ts';

/** How a command ends: with a status, and in words where it could not run. */
export interface Exit {
  readonly with: (status: ExitStatus) => void;
  readonly cannotRun: (reason: string, help?: string) => void;
}

/** A exit that remembers the status for the caller. */
export function rememberExit(cli: CliContext): { exit: Exit; status: () => ExitStatus } {
  let status: ExitStatus = exitStatus.clean;
  const exit: Exit = {
    with: (given) => {
      status = given;
    },
    cannotRun: (reason, help) => {
      cli.err(`${reason}\n${help === undefined ? '' : `${help}\n`}`);
      status = exitStatus.cannotRun;
    },
  };
  return { exit, status: () => status };
}
