import type { Problem } from '../result.ts';

type Worded = Pick<Problem, 'message' | 'help'>;

/** A problem for people: what is wrong on the first line, what to do on the next. */
export function problemText(problem: Worded): string {
  return sentencesOf(problem).join('\n');
}

/** The same on one line, for a cell of a table or a list of reasons. */
export function problemLine(problem: Worded): string {
  return sentencesOf(problem).join(' ');
}

function sentencesOf({ message, help }: Worded): string[] {
  const closed = /[.?!]$/.test(message) ? message : `${message}.`;
  // Help with a reading or a quantity begins in lower case, since it also stands behind a semicolon.
  return help === '' ? [closed] : [closed, help.charAt(0).toUpperCase() + help.slice(1)];
}
