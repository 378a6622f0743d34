import type { YamlProblem } from './yaml-problem.ts';
import { linesOf, spanOf } from './yaml-span.ts';

/** Lines that a merge leaves where both sides changed the same place. */
const opening = /^<{7}(?: .*)?$/m;
const closing = /^>{7}(?: .*)?$/m;

/** What to say of a text in which a merge was left open; null for any other. */
export function conflictProblems(text: string): YamlProblem[] | null {
  const start = opening.exec(text);
  if (start === null || !closing.test(text)) return null;
  const lines = linesOf(text);
  const end = closing.exec(text)?.index ?? 0;
  const [first, last] = [start.index, end].map((offset) => lines.linePos(offset).line);
  return [
    {
      rule: 'syntax/yaml',
      span: spanOf(start.index, start.index + start[0].length, lines),
      message: `Both sides of a merge stand here, from line ${first} to line ${last}`,
      help: 'Keep the side that is right, and remove the lines that begin with `<<<<<<<`, `=======` and `>>>>>>>`.',
    },
  ];
}
