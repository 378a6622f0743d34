import { type NewFileProblem, writeNewFile } from '../../host/write-new-file.ts';
import { failure, type Result, success } from '../../result.ts';
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
  cli.err(started.value.understood.map((line) => `${line}\n`).join(''));
  if (options.dryRun) return cli.out(started.value.text);
  const written = write(started.value);
  if (!written.ok) return exit.cannotRun(written.error);
  cli.out(written.value.map((path) => `${path}\n`).join(''));
  cli.err(nextSteps(started.value));
}

/** Writes the profile and the sheet beside it; both or neither. */
function write({ folder, shown, path, text, sheet }: NewProfile): Result<readonly string[], NewFileProblem> {
  const files = [...(sheet === null ? [] : [sheet]), { path, text }];
  for (const file of files) {
    const written = writeNewFile(folder, file.path, file.text);
    if (!written.ok) return failure({ ...written.error, message: `${shown}${written.error.message}` });
  }
  return success(files.map((file) => `${shown}${file.path}`));
}
