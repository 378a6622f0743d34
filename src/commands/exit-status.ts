import { type ExitStatus, exitStatus, type Surroundings } from './cli-context.ts';

/** How a command ends: with a status, and in words where it could not run. */
export interface Finish {
  readonly with: (status: ExitStatus) => void;
  readonly cannotRun: (reason: string, help?: string) => void;
}

/** A finish that remembers the status for the caller. */
export function rememberFinish(surroundings: Surroundings): { finish: Finish; status: () => ExitStatus } {
  let status: ExitStatus = exitStatus.clean;
  const finish: Finish = {
    with: (given) => {
      status = given;
    },
    cannotRun: (reason, help) => {
      surroundings.err(`${reason}\n${help === undefined ? '' : `${help}\n`}`);
      status = exitStatus.cannotRun;
    },
  };
  return { finish, status: () => status };
}
