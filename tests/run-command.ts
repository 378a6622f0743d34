import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { inject } from 'vitest';
import type { CliContext } from '../src/commands/cli-context.ts';
import { run } from '../src/commands/run.ts';
import type { Asker } from '../src/host/asker.ts';
import type { Progress } from '../src/host/progress.ts';
import { resultFolder } from '../src/host/result-folder.ts';
import type { Finding } from '../src/registry/finding.ts';
import type { Summary } from '../src/report/findings/summary.ts';

/** The day on which all tests run. */
export const testDay = '2026-06-01';

const resultsPath = () => join(inject('reductions'), 'remembered');

/** Where commands keep the results that they remember, shared by all tests and by later runs of the same code. */
export const sharedResults: NonNullable<CliContext['results']> = async () => ({
  folder: resultsPath(),
  store: resultFolder(resultsPath()),
  program: inject('program'),
});

export interface Outcome {
  readonly status: number | null;
  /** Standard output; bytes that are no text as Latin-1. */
  readonly out: string;
  readonly err: string;
}

/** Runs a command line inside of this process, on the test day. */
export async function runCommand(
  cwd: string,
  args: readonly string[],
  options: {
    readonly colour?: boolean;
    readonly today?: string;
    readonly asker?: Asker;
    readonly stdin?: string;
    readonly progress?: Progress;
    readonly changes?: () => AsyncIterable<unknown>;
    readonly serve?: CliContext['serve'];
    readonly terminalColumns?: number;
    readonly results?: CliContext['results'];
  } = {},
): Promise<Outcome> {
  const written = { out: '', err: '' };
  const status = await run(args, '0.0.0', {
    cwd,
    out: (text) => {
      written.out += text;
    },
    outBytes: (bytes) => {
      written.out += Buffer.from(bytes).toString('latin1');
    },
    err: (text) => {
      written.err += text;
    },
    colour: options.colour ?? false,
    today: () => options.today ?? testDay,
    results: options.results ?? sharedResults,
    ...(options.terminalColumns !== undefined && { terminalColumns: options.terminalColumns }),
    ...(options.stdin !== undefined && { stdin: async () => Buffer.from(options.stdin ?? '') }),
    ...(options.progress !== undefined && { progress: options.progress }),
    ...(options.changes !== undefined && { changes: async () => options.changes!() }),
    ...(options.serve !== undefined && { serve: options.serve }),
    ...(options.asker !== undefined && { asker: async () => options.asker! }),
  });
  return { status, ...written };
}

export interface JsonReport {
  readonly findings: readonly Finding[];
  readonly summary: Summary;
}

/** Runs `check` and reads its JSON report. */
export async function checked(cwd: string, ...args: string[]): Promise<JsonReport> {
  const { out } = await runCommand(cwd, ['check', '--format', 'json', ...args]);
  return JSON.parse(out) as JsonReport;
}

/** Bundled before the tests begin. */
export const bundledProgram = fileURLToPath(new URL('../out/cli.cjs', import.meta.url));

/** Runs a command line in a process of its own, as a user would. */
export function spawnCommand(
  cwd: string,
  args: readonly string[],
  env: Readonly<Record<string, string>> = {},
): Outcome {
  const { NO_COLOR: _, FORCE_COLOR: __, ...inherited } = process.env;
  const { status, stdout, stderr } = spawnSync(process.execPath, [bundledProgram, ...args], {
    cwd,
    env: { ...inherited, MELTBOUNDS_CACHE: resultsPath(), ...env },
    encoding: 'utf8',
  });
  return { status, out: stdout, err: stderr };
}

/** A text as one line, whatever its lines were broken to. */
export function unwrapped(text: string): string {
  return text.replace(/\s+/g, ' ');
}
