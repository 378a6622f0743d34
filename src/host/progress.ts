import { printable } from '../text/printable.ts';

/** Says on one line what is being done; the next text takes its place, an empty one leaves nothing. */
export type Progress = (text: string) => void;

/** Progress for a terminal that can clear a line, without colours; null for a file, a pipe or a simple terminal. */
export function terminalProgress(
  write: (text: string) => void,
  isTerminal: boolean,
  env: NodeJS.ProcessEnv,
): Progress | null {
  if (!isTerminal || env.TERM === 'dumb' || (env.CI ?? '') !== '') return null;
  return (text) => write(`\r\u001B[K${printable(text)}`);
}
