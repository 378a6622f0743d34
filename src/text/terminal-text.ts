import { printable, printableLines } from './printable.ts';

/** What a text for a terminal may hold besides what is written in it. */
export interface TerminalForm {
  /** Whether the printers put colours in. */
  readonly colour?: boolean;
  /** Whether its lines are workflow commands, by which a build step talks to its code host. */
  readonly workflowCommands?: boolean;
}

/** The colours and weights that our printers use (ECMA-48, SGR); none hides a text or moves anything. */
const sgr = `${String.fromCharCode(27)}\\[(?:[0-4]|2[2-4]|3[0-79]|9[0-7])m`;
const apart = new RegExp(`(${sgr})`);

/** A command at the beginning of a line, as the runners of code hosts read it: after any blanks, or colours. */
const commandLine = new RegExp(`^((?:[^\\S\\n]|${sgr})*):(?=:)`, 'gm');

/** A command anywhere in a line: `##[error]` and its like. */
const commandInLine = /#(?=#\w*\[)/g;

/**
 * A text as a terminal and the log of a build step may get it: no character of it steers anything, and no line is taken
 * for a command. Everything that the program prints goes through here.
 */
export function terminalText(text: string, { colour, workflowCommands }: TerminalForm = {}): string {
  // Every second part is a colour.
  const parts = colour === true ? text.split(apart) : [text];
  const shown = parts.map((part, index) => (index % 2 === 1 ? part : printableLines(part))).join('');
  const harmless = shown.replace(commandInLine, '\\u{23}');
  return workflowCommands === true ? harmless : harmless.replace(commandLine, '$1\\u{3a}');
}

/** Paths, one a line, as a command lists what it has written. */
export function pathLines(paths: readonly string[]): string {
  return paths.map((path) => `${printable(path)}\n`).join('');
}
