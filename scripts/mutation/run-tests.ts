import { readFileSync } from 'node:fs';
import * as nodeModule from 'node:module';
import { join, relative } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { type File, type Suite, startTests, type Task, type Test, type VitestRunner } from '@vitest/runner';
import { transformSync } from 'esbuild';

/** What came of a test, which is known by its file and its name. */
export interface Outcome {
  readonly id: string;
  readonly file: string;
  readonly name: string;
  readonly milliseconds: number;
  /** What the first failure says; null where it passed. */
  readonly failure: string | null;
}

/** What is to be run, and what is to happen meanwhile. */
interface Request {
  /** The tests to run; all of them unless given. */
  readonly ids?: readonly string[];
  /** Whether the first failure is all that is asked for. */
  readonly isFirstFailureEnough: boolean;
  /** Called when the files are loaded, before the first test. */
  readonly onLoaded: () => void;
  /** Called before each test. */
  readonly onTest: (id: string) => void;
}

interface Loaded {
  readonly format: string;
  readonly source: string;
  readonly shortCircuit: true;
}

/** What Node 22 has and the types of the project's Node do not know. */
type NewerModule = typeof nodeModule & {
  registerHooks(hooks: {
    resolve(name: string, context: object, next: (name: string, context: object) => { url: string }): object;
    load(url: string, context: object, next: (url: string, context: object) => object): object | Loaded;
  }): void;
};

const root = pathToFileURL(`${process.cwd()}/`).href;
const transformed = new Map<string, string>();
let round = 0;

(nodeModule as NewerModule).registerHooks({
  resolve(name, context, next) {
    const resolved = next(name, context);
    const isOfTests = resolved.url.startsWith(`${root}tests/`) && !resolved.url.includes('?');
    return isOfTests ? { ...resolved, url: `${resolved.url}?round=${round}` } : resolved;
  },
  load(url, context, next) {
    const [file = ''] = url.split('?');
    if (!file.startsWith(root) || !file.endsWith('.ts')) return next(url, context);
    return { format: 'module', source: transformedOnce(fileURLToPath(file)), shortCircuit: true };
  },
});

/** The text of a module without its types; those of tests are loaded again and again. */
function transformedOnce(path: string): string {
  const known = transformed.get(path);
  if (known !== undefined) return known;
  const { code } = transformSync(readFileSync(path, 'utf8'), { loader: 'ts', target: 'es2023' });
  transformed.set(path, code);
  return code;
}

const files = (process.env.MUTATION_TESTS ?? '').split(',');
const took = new Map<string, number>();

/** Runs tests from files that are loaded anew, the quickest first; the program that they test is loaded once. */
export async function runTests({ ids, isFirstFailureEnough, onLoaded, onTest }: Request): Promise<Outcome[]> {
  round += 1;
  const asked = ids && new Set(ids);
  const wanted = files.filter((file) => ids?.some((id) => id.startsWith(`${file}#`)) ?? true);
  const outcomes: Outcome[] = [];
  const tell = (test: Test, failure: string | null) => {
    const milliseconds = test.result?.duration ?? 0;
    took.set(idOf(test), milliseconds);
    outcomes.push({ id: idOf(test), file: fileOf(test), name: nameOf(test), milliseconds, failure });
  };
  const runner = {
    config: configuration,
    importFile: (path: string) => import(pathToFileURL(path).href),
    onCollected: async (collected: File[]) => {
      // Files of tests may have asked for other examples.
      await import(`./same-examples.ts?round=${round}`);
      for (const file of collected) {
        if (file.result?.state === 'fail')
          throw new Error(`${file.filepath}: ${file.result.errors?.[0]?.message}`);
        skipOthers(file, asked);
      }
      quickestFirst(collected);
      onLoaded();
    },
    onBeforeRunTask: (test: Test) => {
      if (isFirstFailureEnough && outcomes.some(({ failure }) => failure !== null)) test.mode = 'skip';
    },
    onBeforeTryTask: (test: Test) => onTest(idOf(test)),
    onAfterRunTask: (test: Test) => {
      const { state, errors } = test.result ?? {};
      if (state === 'pass') tell(test, null);
      if (state === 'fail') tell(test, errors?.[0]?.message ?? 'It failed');
    },
  } as unknown as VitestRunner;
  await startTests(
    wanted.map((file) => join(process.cwd(), file)),
    runner,
  );
  return outcomes;
}

const configuration = {
  root: process.cwd(),
  sequence: { shuffle: false, concurrent: false, seed: 1, hooks: 'stack', setupFiles: 'list' },
  maxConcurrency: 1,
  testTimeout: 0,
  hookTimeout: 0,
  retry: 0,
  setupFiles: [],
  tags: ['long', 'exhaustive', 'browser'].map((name) => ({ name })),
};

function skipOthers(task: Task, asked: ReadonlySet<string> | undefined): void {
  if (task.type === 'suite') for (const each of task.tasks) skipOthers(each, asked);
  else if (asked?.has(idOf(task)) === false) task.mode = 'skip';
}

function quickestFirst(tasks: Task[]): number {
  const milliseconds = new Map(tasks.map((task) => [task, durationOf(task)]));
  tasks.sort((one, other) => (milliseconds.get(one) ?? 0) - (milliseconds.get(other) ?? 0));
  return [...milliseconds.values()].reduce((sum, each) => sum + each, 0);
}

function durationOf(task: Task): number {
  if (task.type === 'suite') return quickestFirst(task.tasks);
  return task.mode === 'skip' ? 0 : (took.get(idOf(task)) ?? 0);
}

function idOf(test: Test): string {
  return `${fileOf(test)}#${nameOf(test)}`;
}

function fileOf({ file }: Test): string {
  return relative(process.cwd(), file.filepath);
}

function nameOf(test: Test): string {
  const names: string[] = [];
  for (let task: Test | Suite | undefined = test; task !== undefined; task = task.suite)
    names.unshift(task.name);
  return names.join(' > ');
}
