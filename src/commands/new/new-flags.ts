import type { Kind } from '../../registry/kind.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import { answerProblem } from '../../scaffold/answer-problem.ts';
import { type Answers, placeOfWay, valueOfText, withAnswer } from '../../scaffold/answers.ts';
import type { Field } from '../../scaffold/field.ts';
import { quote } from '../../text/quote.ts';
import { wordHint } from '../../text/unknown-word.ts';
import { usage } from '../usage.ts';
import { sheetOf } from './ask-answers.ts';

/** The answers that the command line holds: an id, and `key=value` pairs, each judged on the spot. */
export function answersFromFlags(
  kind: Kind,
  fields: readonly Field[],
  id: string | undefined,
  pairs: readonly string[],
): Result<Answers, Problem> {
  // The sheet comes first, since statements cite it.
  const ordered = [...(id === undefined ? [] : [`id=${id}`]), ...pairs].sort(
    (a, b) => Number(b.startsWith('sheet=')) - Number(a.startsWith('sheet=')),
  );
  let answers: Answers = {};
  for (const pair of ordered) {
    const [, way = '', text = ''] = /^([^=]*)=(.*)$/s.exec(pair) ?? [];
    if (way === '')
      return usage(`--set "${quote(pair)}" is no key with a value`, 'Write it as --set key=value.');
    const place = placeOfWay(fields, way);
    if (place === null) return unknownWay(kind, way, fields);
    const value = valueOfText(place.field, text, sheetOf(answers));
    const problem = answerProblem(kind, place.path, value);
    if (problem !== null) return refusal(problem.code, `${way}: ${problem.message}`, problem.help);
    answers = withAnswer(answers, place.path, value);
  }
  return success(answers);
}

function unknownWay(kind: Kind, way: string, fields: readonly Field[]) {
  const keys = `Its keys are ${fields.map(({ key }) => key).join(', ')}.`;
  return usage(`A ${kind} has no key "${quote(way)}"`, wordHint(way, waysOf(fields, ''), keys));
}

function waysOf(fields: readonly Field[], before: string): string[] {
  return fields.flatMap((field) => [
    `${before}${field.key}`,
    ...waysOf(field.fields, `${before}${field.key}.`),
  ]);
}
