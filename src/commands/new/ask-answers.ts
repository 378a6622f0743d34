import type { Answer, Asker } from '../../host/asker.ts';
import { shapes } from '../../registry/generated/shapes.ts';
import type { Kind } from '../../registry/kind.ts';
import { idsOf, type Registry } from '../../registry/registry.ts';
import { type Path, shapeAt } from '../../registry/shape.ts';
import { answerProblem } from '../../scaffold/answer-problem.ts';
import { type Answers, valueAt, valueOfText, withAnswer } from '../../scaffold/answers.ts';
import type { Field } from '../../scaffold/field.ts';
import { type Question, questionsOf } from '../../scaffold/questions.ts';
import { problemLine } from '../../text/problem-text.ts';

/** The document that questions are asked for. */
interface Asked {
  readonly kind: Kind;
  readonly fields: readonly Field[];
  readonly registry: Registry;
}

const another = 'another one';
/** A document is not finished without, but may be begun. */
const later = 'fill it in later, in the file';
const leaveOut = 'leave it out';

/** Asks for what is mandatory and not answered yet; null when the user stops. */
export async function askAnswers(asker: Asker, asked: Asked, known: Answers): Promise<Answers | null> {
  let answers: Answers | null = known;
  for (const group of questionsOf(asked.fields, known)) {
    const wanted = group.offer === null ? true : await asker.confirm(offerText(group.offer, group.questions));
    if (wanted === 'stopped') return null;
    if (wanted) answers = await askGroup(asker, group.questions, asked, answers);
    if (answers === null) return null;
  }
  return answers;
}

function offerText({ key, description }: Field, { length }: readonly Question[]): string {
  return `${key}: ${description} Fill in its ${length} values now? They stand in the file in any case.`;
}

async function askGroup(
  asker: Asker,
  questions: readonly Question[],
  asked: Asked,
  known: Answers,
): Promise<Answers | null> {
  let answers = known;
  for (const question of questions) {
    const answer = await ask(asker, question, asked, answers);
    if (answer === 'stopped') return null;
    if (answer.text === null) continue;
    const value = valueOfText(question.field, answer.text, sheetOf(answers));
    answers = withAnswer(answers, question.path, value);
  }
  return answers;
}

/** The source that statements of a new document cite. */
export function sheetOf(answers: Answers): string | null {
  return typeof answers.sheet === 'string' ? answers.sheet : null;
}

async function ask(asker: Asker, question: Question, asked: Asked, answers: Answers): Promise<Answer> {
  const { field, way, isOptional } = question;
  const message = `${way}: ${field.description}`;
  if (field.choices.length > 0 && field.form !== 'list') {
    return asker.choose({ message, choices: field.choices, open: isOptional ? leaveOut : later });
  }
  const ids = knownIds(question.path, asked, answers);
  if (ids.length > 0) {
    const chosen = await asker.choose({ message, choices: ids, open: another });
    if (chosen === 'stopped' || chosen.text !== null) return chosen;
  }
  return asker.text({
    message: field.allowed === '' ? message : `${message} ${field.allowed}`,
    example: exampleText(field),
    open: way === 'id' ? null : `Enter alone: ${isOptional ? leaveOut : later}`,
    suggestion: suggestionFor(field.key, answers),
    problem: (text) => {
      const value = valueOfText(field, text, sheetOf(answers));
      const problem = answerProblem(asked.kind, question.path, value);
      return problem === null ? null : problemLine(problem);
    },
  });
}

/** Ids that a reference may name; those of sources are as many as there are profiles, and rarely the one meant. */
function knownIds(path: Path, { kind, registry }: Asked, answers: Answers): readonly string[] {
  const shape = shapeAt(shapes[kind], path);
  if (shape?.type !== 'reference' || shape.to === 'source') return [];
  if (shape.to !== 'nozzle') return idsOf(registry, shape.to);
  const machine = registry.machine.get(String(valueAt(answers, ['machine'])));
  return machine?.data.hotEnds.flatMap(({ nozzles }) => nozzles.map(({ id }) => id)) ?? [];
}

function exampleText({ form, example }: Field): string {
  const [first] = form === 'statements' && Array.isArray(example) ? example : [];
  const shown: unknown = first === undefined ? example : (first as { value: unknown }).value;
  return typeof shown === 'string' ? shown : shown === undefined ? '' : JSON.stringify(shown);
}

/** What an id such as `oakhollow/tulip-petg` suggests for the keys that usually repeat it, and a polymer for the designation. */
function suggestionFor(key: string, { id, polymer }: Answers): string {
  if (key === 'designation') return typeof polymer === 'string' ? polymer : '';
  const [maker = '', name] = String(id ?? '').split('/');
  if (name === undefined) return '';
  const suggestions: Readonly<Record<string, string>> = {
    maker: capitals(maker),
    name: capitals(name),
    sheet: `${maker}-${name}-sheet`,
  };
  return Object.hasOwn(suggestions, key) ? (suggestions[key] ?? '') : '';
}

function capitals(id: string): string {
  return id
    .split('-')
    .map((word) => word.charAt(0).toUpperCase() + word.slice(1))
    .join(' ');
}
