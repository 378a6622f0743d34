import { dirname, relative } from 'node:path';
import { fileErrorCode } from '../../host/file-error.ts';
import { filesOfFolders } from '../../host/load-registry.ts';
import { isAtLeast, type Severity } from '../../registry/finding.ts';
import { type ParseFile, parsingChanges } from '../../registry/load-files.ts';
import { pathOfFile } from '../../registry/registry-file.ts';
import { type ResultMemory, recallingOnce } from '../../registry/result-memory.ts';
import { formatReport } from '../../report/findings/findings-formats.ts';
import { summarise } from '../../report/findings/summary.ts';
import type { ReportFormat } from '../../report/report-formats.ts';
import { type Problem, type Result, success } from '../../result.ts';
import { capAcknowledged } from '../../rules/engine/cap-findings.ts';
import type { Judgement } from '../../rules/engine/check-registry.ts';
import type { Shard } from '../../rules/engine/evidence-shards.ts';
import { pathLines } from '../../text/terminal-text.ts';
import { type CliContext, exitStatus } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { openMemory } from '../open-memory.ts';
import { usage } from '../usage.ts';
import { cannotWatch, nobodyWatches } from '../watching.ts';
import { scopeOf } from './check-scope.ts';
import { stdinCheck } from './check-stdin.ts';
import { checkTarget } from './check-target.ts';
import { type AskedCheck, type CheckedFiles, checkedFiles, textsOf } from './checked-files.ts';
import { fixFiles } from './fix-files.ts';
import { judgeAnew, recallOrJudge } from './remembered-check.ts';

export interface CheckOptions {
  readonly format: ReportFormat;
  readonly failOn: Severity;
  readonly quiet?: boolean;
  readonly acknowledged?: boolean;
  readonly changed?: string;
  readonly shard?: Shard;
  readonly watch?: boolean;
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
  const asked = await askedFor(paths, options, cli);
  if (!asked.ok) return exit.cannotRun(asked.error);
  const memory = await openMemory(cli, options.remember, asked.value.target.folders);
  if (!memory.ok) return exit.cannotRun(memory.error);
  const run: CheckRun = { asked: asked.value, options, memory: memory.value, version, cli, exit };
  if (options.watch === true) await checkAgainAndAgain(run, recallingOnce(memory.value));
  else
    await checkOnce(run, ({ files, wanted, wantsFile, today }) =>
      isAllSeen(asked.value) && memory.value.isKept
        ? recallOrJudge(files, wanted, wantsFile, memory.value, today, cli)
        : judgeAnew(files, wantsFile, memory.value, today, cli),
    );
}

/** Whether a check has read all that its findings rest on: of a file from outside a registry it has not read the sheet. */
function isAllSeen({ target }: AskedCheck): boolean {
  return target.loose.length === 0;
}

interface CheckRun {
  readonly asked: AskedCheck;
  readonly options: CheckOptions;
  readonly memory: ResultMemory;
  readonly version: string;
  readonly cli: CliContext;
  readonly exit: Exit;
}

interface Judging {
  readonly files: CheckedFiles;
  /** Paths of the profiles whose findings are wanted. */
  readonly wanted: readonly string[];
  readonly wantsFile: (file: string) => boolean;
  readonly today: string;
}

async function checkOnce(
  { asked, options, memory, version, cli, exit }: CheckRun,
  judging: (judged: Judging) => Promise<Judgement>,
  parse?: ParseFile,
): Promise<void> {
  const { cwd, progress = () => undefined } = cli;
  const { target, read } = asked;
  const stop = (problem: Problem) => {
    progress('');
    exit.cannotRun(problem);
  };
  progress(`Reading ${target.folders.map((folder) => relative(cwd, folder) || '.').join(', ')} …`);
  let files = read(parse);
  progress(`Checking ${files.profiles.length} profiles …`);
  const scope = await scopeOf(files, target, options, memory, cli);
  if (!scope.ok) return stop(scope.error);
  const { wantsFile } = scope.value;
  const wanted = files.profiles.map(({ file }) => pathOfFile(file)).filter(wantsFile);
  // That nothing has changed is an answer; that there is nothing at all is a slip.
  const isNarrowed = options.changed !== undefined || options.shard !== undefined;
  if (wanted.length === 0 && !isNarrowed) return stop(noProfiles);
  if (options.fix) {
    progress('');
    const tell = (line: string) => cli.err(pathLines([line]));
    const readAnew = () => read().loaded();
    const fixed = await fixFiles(files.loaded(), { wantsFile, cwd, tell, readAnew });
    if (!fixed.ok) return stop(fixed.error);
    files = read();
  }
  const today = options.today ?? cli.today();
  const { findings, acknowledged } = await judging({
    files,
    wanted,
    wantsFile,
    today,
  });
  progress('');
  const texts = isAllSeen(asked) ? textsOf(files) : files.loaded().texts;
  const report = await formatReport[options.format]({
    findings: options.quiet ? findings.filter(({ severity }) => severity === 'error') : findings,
    summary: summarise(findings, wanted.length, acknowledged.length),
    acknowledged: options.acknowledged ? capAcknowledged(acknowledged) : null,
    files: wanted,
    failOn: options.failOn,
    version,
    today,
    colour: cli.colour,
    textOf: (file) => texts.get(file),
  });
  cli.out(report, { workflowCommands: options.format === 'annotations' });
  const fails = findings.some(({ severity }) => isAtLeast(severity, options.failOn));
  exit.with(fails ? exitStatus.findings : exitStatus.clean);
}

/** Checks once, and again after every change; only what has changed is parsed and reduced again. */
async function checkAgainAndAgain(run: CheckRun, memory: ResultMemory): Promise<void> {
  const { cli, exit, asked } = run;
  const { folders, loose } = asked.target;
  if (cli.changes === undefined) return exit.cannotRun(nobodyWatches);
  const parse = parsingChanges();
  let isFirst = true;
  const check = () =>
    checkOnce(
      run,
      async ({ files, wantsFile, today }) => {
        const { judge } = await import('./judge.ts');
        if (!isFirst) return judge(files, wantsFile, memory, today);
        isFirst = false;
        return judgeAnew(files, wantsFile, memory, today, cli);
      },
      parse,
    );
  try {
    const changes = await cli.changes([...folders, ...loose.map((file) => dirname(file))]);
    await check();
    cli.err('Waiting for changes; Ctrl+C ends it.\n');
    for await (const _ of changes) {
      cli.out('\n');
      await check();
    }
  } catch (error) {
    exit.cannotRun(cannotWatch(fileErrorCode(error)));
  }
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
      read: (parse) => checkedFiles(filesOfFolders(folders, loose, cwd), folders, cwd, parse),
    });
  }
  if (paths.length > 1) return usage('- stands alone', 'Check what comes on standard input by itself.');
  if (options.fix) return usage('--fix changes files, and standard input is none', 'Leave it out.');
  if (options.changed !== undefined)
    return usage('--changed asks about files, and standard input is none', 'Leave it out.');
  if (options.watch)
    return usage('--watch waits for files to change, and standard input is none', 'Leave it out.');
  return stdinCheck((await stdin?.()) ?? new Uint8Array(), options, cwd);
}
