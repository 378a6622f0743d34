import { dirname } from 'node:path';
import { type NewFileProblem, writeNewFile } from '../../host/writing/write-new-file.ts';
import { failure, type Result, success } from '../../result.ts';
import { pathLines } from '../../text/terminal-text.ts';
import type { CliContext } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { nextSteps } from './new-next-steps.ts';
import { type NewOptions, type NewProfile, startProfile } from './new-profile.ts';

export async function runNew(
  kind: string,
  id: string | undefined,
  options: NewOptions,
  cli: CliContext,
  exit: Exit,
): Promise<void> {
  const started = await startProfile(kind, id, options, cli);
  if (!started.ok) return exit.cannotRun(started.error);
  cli.err(pathLines(started.value.understood));
  if (options.dryRun) return cli.out(started.value.text);
  const written = await write(started.value);
  if (!written.ok) return exit.cannotRun(written.error);
  cli.out(pathLines(written.value));
  cli.err(nextSteps(started.value));
}

/** Writes the profile and the sheet beside it; both or neither. */
async function write(profile: NewProfile): Promise<Result<readonly string[], NewFileProblem>> {
  const { kind, folder, shown, path, text, sheet } = profile;
  const written = await writeNewFile(
    folder,
    { path, text },
    {
      beside: sheet,
      // Trials lie in folders by their years, and each has its id alone.
      ...(kind === 'trial' && { onlyOneIn: dirname(dirname(path)) }),
    },
  );
  if (!written.ok) return failure({ ...written.error, message: `${shown}${written.error.message}` });
  return success([...(sheet === null ? [] : [sheet.path]), path].map((each) => `${shown}${each}`));
}
