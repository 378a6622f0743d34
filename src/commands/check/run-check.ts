import { relative } from 'node:path';
import { filesOfFolders } from '../../host/load-registry.ts';
import { isAtLeast, type Severity } from '../../registry/finding.ts';
import { pathOfFile } from '../../registry/registry-file.ts';
import { formatReport } from '../../report/findings/findings-formats.ts';
import { summarise } from '../../report/findings/summary.ts';
import type { ReportFormat } from '../../report/report-formats.ts';
import { type Problem, type Result, success } from '../../result.ts';
import { type CliContext, exitStatus } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { openMemory } from '../open-memory.ts';
import { usage } from '../usage.ts';
import { scopeOf } from './check-scope.ts';
import { stdinCheck } from './check-stdin.ts';
import { checkTarget } from './check-target.ts';
import { type AskedCheck, checkedFiles, textsOf } from './checked-files.ts';
import { fixFiles } from './fix-files.ts';
import { recallOrJudge } from './remembered-check.ts';

export interface CheckOptions {
  readonly format: ReportFormat;
  readonly failOn: Severity;
  readonly quiet?: boolean;
  readonly changed?: string;
  readonly fix?: boolean;
  readonly all?: boolean;
  readonly stdinPath?: string;
  readonly remember: boolean;
  readonly registry: readonly string[];
  readonly today?: string;
}

export async function runCheck(
  paths: readonly string[],
  options: CheckOptions,
  version: string,
  cli: CliContext,
  exit: Exit,
): Promise<void> {
  const { cwd, progress = () => undefined } = cli;
  const asked = await askedFor(paths, options, cli);
  if (!asked.ok) return exit.cannotRun(asked.error);
  const { target, read } = asked.value;
  const stop = (problem: Problem) => {
    progress('');
    exit.cannotRun(problem);
  };
  progress(`Reading ${target.folders.map((folder) => relative(cwd, folder) || '.').join(', ')} …`);
  let files = read();
  progress(`Checking ${files.profiles.length} profiles …`);
  const scope = await scopeOf(files, target, options.changed, cwd);
  if (!scope.ok) return stop(scope.error);
  const { wantsFile } = scope.value;
  const wanted = files.profiles.map(({ file }) => pathOfFile(file)).filter(wantsFile);
  // That nothing has changed is an answer; that there is nothing at all is a slip.
  if (wanted.length === 0 && options.changed === undefined) return stop(noProfiles);
  if (options.fix) {
    const fixed = await fixFiles(files.loaded(), wantsFile, cwd);
    if (!fixed.ok) return stop(fixed.error);
    progress('');
    for (const line of fixed.value) cli.err(`${line}\n`);
    files = read();
  }
  const memory = await openMemory(cli, options.remember, target.folders);
  if (!memory.ok) return stop(memory.error);
  const findings = recallOrJudge(files, wanted, wantsFile, memory.value, options.today ?? cli.today());
  progress('');
  const texts = textsOf(files);
  const report = formatReport[options.format]({
    findings: options.quiet ? findings.filter(({ severity }) => severity === 'error') : findings,
    summary: summarise(findings, wanted.length),
    files: wanted,
    failOn: options.failOn,
    version,
    colour: cli.colour,
    textOf: (file) => texts.get(file),
  });
  cli.out(report);
  const fails = findings.some(({ severity }) => isAtLeast(severity, options.failOn));
  exit.with(fails ? exitStatus.findings : exitStatus.clean);
}

const noProfiles: Problem = {
  code: 'noProfiles',
  message: 'There is no profile (.yaml) to check here',
  help: 'Name a file or a folder that holds some.',
};

/** What to check: files and folders, or what comes on standard input. */
async function askedFor(
  paths: readonly string[],
  options: CheckOptions,
  { cwd, stdin }: CliContext,
): Promise<Result<AskedCheck, Problem>> {
  if (!paths.includes('-')) {
    const target = checkTarget(paths, options, cwd);
    if (!target.ok) return target;
    const { folders, loose } = target.value;
    return success({
      target: target.value,
      read: () => checkedFiles(filesOfFolders(folders, loose, cwd), folders, cwd),
    });
  }
  if (paths.length > 1) return usage('- stands alone', 'Check what comes on standard input by itself.');
  if (options.fix) return usage('--fix changes files, and standard input is none', 'Leave it out.');
  if (options.changed !== undefined)
    return usage('--changed asks about files, and standard input is none', 'Leave it out.');
  return stdinCheck((await stdin?.()) ?? new Uint8Array(), options, cwd);
}
