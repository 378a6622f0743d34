import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { CliContext } from '../../src/commands/cli-context.ts';
import { run } from '../../src/commands/run.ts';
import { type Block, blocksOf } from './document-blocks.ts';
import { installPackage, runProgram } from './programs.ts';
import { commandLines, shellWords } from './shell-words.ts';

/** What a block of the document shows, against what its commands print today. */
export interface ShownOutput {
  readonly block: Block;
  readonly printed: string;
}

export interface DocumentRun {
  readonly outputs: readonly ShownOutput[];
  /** Commands that did not end as the document says, each a sentence. */
  readonly failures: readonly string[];
}

/** Day on which the documents' commands run. */
const documentDay = '2026-11-25';

/** Programs that a document may call beside ours, and that run here as they stand. */
const realPrograms = new Set(['git', 'mkdir', 'cp']);

/** Commands for a reader's own machine: they install packages or run this project's own scripts. */
const notRunHere = /^(?:npm (?:ci|install|test|run|init|exec|pack)|bash \.ci\/run|npx changeset|node dist)/;

const demoProfiles = fileURLToPath(new URL('../../profiles', import.meta.url));

/** Where the commands of a document keep the results that they remember; without it they compute everything. */
type Results = CliContext['results'];

interface Session {
  readonly root: string;
  readonly results: Results;
  cwd: string;
  printed: string;
  readonly failures: string[];
}

/**
 * Does what a Markdown document tells its reader, from top to bottom, in an empty folder with a copy of the demo registry:
 * blocks with a path (`csv ladder.csv`) become files, `diff PATH` blocks edit one, `sh` blocks run (`sh exits=1` where a
 * command ends so), `ts` blocks are programs that run, `sql FOLDER` blocks are asked of the Parquet files of a folder, and a `text`, `json`, `csv` or `markdown` block right after them
 * shows what they print. A line `…` stands for lines left out.
 */
export async function runDocument(markdown: string, root: string, results?: Results): Promise<DocumentRun> {
  const session: Session = { root, results, cwd: root, printed: '', failures: [] };
  const blocks = blocksOf(markdown);
  cpSync(demoProfiles, join(root, 'profiles'), { recursive: true });
  if (blocks.some(({ language, text }) => language === 'sh' && /^git /m.test(text))) beginRepository(root);
  if (blocks.some(({ language }) => language === 'ts')) installPackage(root);
  const outputs: ShownOutput[] = [];
  for (const [index, block] of blocks.entries()) {
    const [path] = block.words;
    if (block.language === 'sh') await runBlock(block, session);
    else if (block.language === 'ts') runProgramBlock(block, session);
    else if (block.language === 'sql') await runQuery(block, session);
    else if (block.language === 'diff') editFile(block, session);
    else if (path !== undefined) writeFile(path, block.text, session);
    else if (shows(markdown, blocks[index - 1], block)) outputs.push({ block, printed: session.printed });
  }
  return { outputs, failures: session.failures };
}

/** Whether an output block belongs to what runs above it: nothing but a blank line or one short sentence between. */
function shows(markdown: string, above: Block | undefined, { language, start }: Block): boolean {
  if (above === undefined || !['sh', 'ts', 'sql'].includes(above.language)) return false;
  const between = markdown.slice(above.end, start);
  return ['text', 'json', 'csv', 'markdown', 'yaml'].includes(language) && between.split('\n\n').length <= 3;
}

function beginRepository(root: string): void {
  const git = (...args: string[]) => spawnSync('git', args, { cwd: root, env: gitEnvironment() });
  git('init', '--quiet', '--initial-branch', 'main');
  git('add', '.');
  git('commit', '--quiet', '--message', 'The demo registry');
}

function gitEnvironment(): NodeJS.ProcessEnv {
  const who = { NAME: 'Bench', EMAIL: 'bench@example.org', DATE: `${documentDay}T12:00:00Z` };
  const roles = ['AUTHOR', 'COMMITTER'].flatMap((role) =>
    Object.entries(who).map(([key, value]) => [`GIT_${role}_${key}`, value]),
  );
  return {
    ...process.env,
    ...Object.fromEntries(roles),
    GIT_CONFIG_GLOBAL: '/dev/null',
    GIT_CONFIG_NOSYSTEM: '1',
  };
}

async function runBlock(block: Block, session: Session): Promise<void> {
  session.printed = '';
  const expected = Number(block.words.find((word) => word.startsWith('exits='))?.slice('exits='.length) ?? 0);
  for (const line of commandLines(block.text)) {
    if (notRunHere.test(line)) continue;
    const before = session.printed.length;
    const status = await runLine(shellWords(line), session);
    if (status === expected) continue;
    session.failures.push(
      `line ${block.line}: "${line}" ended with ${status}, not ${expected}:\n${session.printed.slice(before)}`,
    );
  }
}

function runProgramBlock({ text, line }: Block, session: Session): void {
  const { printed, status } = runProgram(text, session.cwd);
  session.printed = printed;
  if (status !== 0) session.failures.push(`line ${line}: the program ended with ${status}:\n${printed}`);
}

async function runQuery({ text, line, words: [folder] }: Block, session: Session): Promise<void> {
  const { answerSql } = await import('./answer-sql.ts');
  session.printed = '';
  try {
    session.printed = await answerSql(text, session.cwd, folder);
  } catch (error) {
    session.failures.push(`line ${line}: the question was refused: ${error}`);
  }
}

async function runLine(words: readonly string[], session: Session): Promise<number | null> {
  const [program = '', ...args] = words[0] === 'npx' ? words.slice(1) : words;
  if (program === 'cd') {
    session.cwd = resolve(session.cwd, args[0] ?? '.');
    return existsSync(session.cwd) ? 0 : 1;
  }
  if (program === 'meltbounds') return runOurs(args, session);
  if (!realPrograms.has(program)) throw new Error(`A document calls "${program}", which is not known here`);
  const { status, stdout, stderr } = spawnSync(program, args, {
    cwd: session.cwd,
    env: gitEnvironment(),
    encoding: 'utf8',
  });
  session.printed += `${stdout}${stderr}`;
  return status;
}

function runOurs(args: readonly string[], session: Session): Promise<number> {
  const print = (text: string) => {
    session.printed += text;
  };
  const { cwd, results } = session;
  return run(args, '0.0.0', {
    ...{ cwd, out: print, err: print, colour: false, today: () => documentDay },
    outBytes: () => print('bytes\n'),
    ...(results !== undefined && { results }),
  });
}

function writeFile(path: string, text: string, { cwd }: Session): void {
  const file = join(cwd, path);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, text);
}

/** Replaces the lines that begin with `-` by those that begin with `+`; they must stand in the file exactly once. */
function editFile({ words: [path = ''], text, line }: Block, { cwd, failures }: Session): void {
  const lines = (sign: string) =>
    text
      .split('\n')
      .filter((each) => each.startsWith(sign))
      .map((each) => `${each.slice(1)}\n`)
      .join('');
  const file = join(cwd, path);
  const parts = readFileSync(file, 'utf8').split(lines('-'));
  if (parts.length === 2) writeFileSync(file, parts.join(lines('+')));
  else failures.push(`line ${line}: the lines to replace stand ${parts.length - 1} times in ${path}`);
}
