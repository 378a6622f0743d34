import type { Asker } from '../host/asker.ts';
import type { Progress } from '../host/progress.ts';
import type { ServedFolder } from '../host/serve-folder.ts';
import type { Threads } from '../host/threads.ts';
import type { ResultStore } from '../registry/result-store.ts';
import { type TerminalForm, terminalText } from '../text/terminal-text.ts';

/** Results of earlier runs. */
interface KeptResults {
  /** Absolute path. */
  readonly folder: string;
  readonly store: ResultStore;
  /** Tells this program from every other one. */
  readonly program: string;
}

/** What a command may touch outside of itself, so that tests can give it a world of their own. */
export interface CliContext {
  readonly cwd: string;
  /** Prints on standard output; within a command it passes `terminalText` first, and workflow commands say that they are. */
  readonly out: (text: string, form?: Pick<TerminalForm, 'workflowCommands'>) => void;
  /** Prints what is no text, such as a workbook; never where a terminal shows it. */
  readonly outBytes: (bytes: Uint8Array) => void;
  readonly err: (text: string) => void;
  readonly colour: boolean;
  /** Today's date, YYYY-MM-DD, in UTC. */
  readonly today: () => string;
  /** Columns of the terminal that standard output goes to; absent where it goes to a file or a pipe. */
  readonly terminalColumns?: number;
  /** Everything that comes on standard input. */
  readonly stdin?: () => Promise<Uint8Array>;
  /** Standard input and output as they come and go, for a program that converses; absent where nobody does. */
  readonly streams?: () => { readonly input: NodeJS.ReadStream; readonly output: NodeJS.WritableStream };
  /** Where results are kept between runs, and which program computes them; absent where nothing is remembered. */
  readonly results?: () => Promise<KeptResults>;
  /** Tells of each change in some folders from now on; throws what the system says. Absent where nobody watches. */
  readonly changes?: (folders: readonly string[]) => Promise<AsyncIterable<unknown>>;
  /** Serves a folder to this machine at a port; throws what the system says. Absent where nobody asks for it. */
  readonly serve?: (folder: string, port: number) => Promise<ServedFolder>;
  /** Threads to share long work with; absent where there is one only. */
  readonly threads?: () => Promise<Threads>;
  /** Shows what is being done; absent where nobody watches. */
  readonly progress?: Progress;
  /** Somebody to ask; absent where nobody sits at a terminal. */
  readonly asker?: () => Promise<Asker>;
}

/** Exit statuses of every command. */
export const exitStatus = { clean: 0, findings: 1, cannotRun: 2 } as const;

export type ExitStatus = (typeof exitStatus)[keyof typeof exitStatus];

/** Colour where the terminal shows it, unless the user has said no (no-color.org) or asked for it. */
export function wantsColour(env: NodeJS.ProcessEnv, isTerminal: boolean): boolean {
  if (env.NO_COLOR !== undefined && env.NO_COLOR !== '') return false;
  if (env.FORCE_COLOR !== undefined && env.FORCE_COLOR !== '' && env.FORCE_COLOR !== '0') return true;
  return isTerminal && env.TERM !== 'dumb';
}

/**
 * The same context, whose outputs defuse whatever a profile, a path, an option or another program brings. Commands are given
 * no other, so that none can forget it.
 */
export function withSafeOutput(cli: CliContext): CliContext {
  const { colour, out, err } = cli;
  return {
    ...cli,
    out: (text, form) => out(terminalText(text, { ...form, colour })),
    err: (text) => err(terminalText(text, { colour })),
  };
}
