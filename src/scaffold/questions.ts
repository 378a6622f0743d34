import type { Path } from '../registry/shape.ts';
import { type Answers, pathOfWay, valueAt } from './answers.ts';
import type { Field } from './field.ts';

/** Something to ask for: one place of the document. */
export interface Question {
  readonly field: Field;
  /** Keys to the place, `envelope.x` for instance, as flags name it. */
  readonly way: string;
  readonly path: Path;
  /** Whether the document can do without. */
  readonly isOptional: boolean;
}

/** Questions that belong together; a large group is asked about only if the user wants to. */
interface QuestionGroup {
  /** The field that a large group stands for; null for what is asked in any case. */
  readonly offer: Field | null;
  readonly questions: readonly Question[];
}

/** More questions than this about one key are offered, not asked. */
const mostAsked = 3;

/** What a new document still has to be asked for: places that no answer covers, in the order of the schema. */
export function questionsOf(fields: readonly Field[], answers: Answers): QuestionGroup[] {
  return fields
    .filter(({ isMandatory, isAsked }) => isMandatory || isAsked === true)
    .flatMap((field): QuestionGroup[] => {
      const questions = leafWays(field, [field.key])
        .map(({ field: leaf, way }) => ({
          field: leaf,
          way: way.join('.'),
          path: pathOfWay(fields, way),
          isOptional: !field.isMandatory,
        }))
        .filter(({ path }) => valueAt(answers, path) === undefined);
      if (questions.length === 0) return [];
      return [{ offer: questions.length > mostAsked ? field : null, questions }];
    });
}

function leafWays(field: Field, way: readonly string[]): { field: Field; way: readonly string[] }[] {
  if (field.form !== 'group' && field.form !== 'groups') return [{ field, way }];
  const mandatory = field.fields.filter(({ isMandatory }) => isMandatory);
  return mandatory.flatMap((inner) => leafWays(inner, [...way, inner.key]));
}
