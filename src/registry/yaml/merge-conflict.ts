import type { LineCounter } from 'yaml';
import type { YamlProblem } from './yaml-problem.ts';
import { linesOf, spanOf } from './yaml-span.ts';

/** Lines that a merge leaves where both sides changed the same place. */
const opening = /^<{7}(?: .*)?$/m;
const closing = /^>{7}(?: .*)?$/m;
const marker = /^(?:<{7}(?: .*)?|={7}|>{7}(?: .*)?)$/m;

/** What to say of a text in which a merge was left open; null for any other. */
export function conflictProblems(text: string): YamlProblem[] | null {
  const start = opening.exec(text);
  const lines = linesOf(text);
  if (start === null || !closing.test(text)) return leftOver(text, lines);
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

/** One of the lines alone, as when a merge was cleaned up in haste. */
function leftOver(text: string, lines: LineCounter): YamlProblem[] | null {
  const found = marker.exec(text);
  if (found === null) return null;
  return [
    {
      rule: 'syntax/yaml',
      span: spanOf(found.index, found.index + found[0].length, lines),
      message: 'A mark of a merge is left here',
      help: 'Remove the line, and see that of each line around it only the side stands that is right.',
    },
  ];
}
