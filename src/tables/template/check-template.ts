import type { TemplateSpans } from 'mustache';
import type { Problem } from '../../result.ts';
import { quote } from '../../text/quote.ts';
import { wordHint } from '../../text/unknown-word.ts';
import { type TemplateVariable, templateVariables } from './template-variables.ts';

/** What is wrong with a tag of a template. */
interface TagProblem extends Problem<'otherFile' | 'unknownVariable' | 'listAsText' | 'nestedTooDeep'> {
  /** The place in the template as an index of characters. */
  readonly at: number;
}

/** Sections inside of sections; more than any sheet needs. */
const deepest = 12;

/** Looks at every tag of a template: unknown variables, other files, sections too deep. In the order of the text. */
export function templateProblems(spans: TemplateSpans): TagProblem[] {
  return problemsIn(spans, [templateVariables], 0);
}

/** The variables in reach, those of the innermost list first. */
type Scope = readonly (readonly TemplateVariable[])[];

function problemsIn(spans: TemplateSpans, scope: Scope, depth: number): TagProblem[] {
  return spans.flatMap((span): TagProblem[] => {
    const [type, name, at] = span;
    switch (type) {
      case 'text':
      case '!':
      case '=':
        return [];
      case '>':
        return [
          {
            at,
            code: 'otherFile',
            message: 'A template reads no other file',
            help: `Write what "${quote(name)}" holds into it.`,
          },
        ];
      case 'name':
      case '&':
        return [...nameProblems(name, at, scope), ...listProblems(name, at, scope)];
      case '#':
      case '^':
        return sectionProblems(type, name, at, span[4], scope, depth);
      default:
        return [];
    }
  });
}

function sectionProblems(
  type: '#' | '^',
  name: string,
  at: number,
  inner: unknown,
  scope: Scope,
  depth: number,
): TagProblem[] {
  const problems = nameProblems(name, at, scope);
  if (problems.length > 0) return problems;
  if (depth >= deepest) return [tooDeep(at)];
  const variable = found(name, scope);
  const items = type === '#' ? (variable?.items ?? itemsOfTexts(variable)) : null;
  return Array.isArray(inner) ? problemsIn(inner, items === null ? scope : [items, ...scope], depth + 1) : [];
}

function tooDeep(at: number): TagProblem {
  const message = `Sections stand at most ${deepest} deep in each other`;
  return { at, code: 'nestedTooDeep', message, help: 'Take one of them out of the others.' };
}

const itself: TemplateVariable = { name: '.', kind: 'text', description: 'The text itself', example: '' };

/** Inside of a section over texts, or over one text or number, `{{.}}` is the text itself. */
function itemsOfTexts(variable: TemplateVariable | undefined): readonly TemplateVariable[] | null {
  return variable === undefined || variable.kind === 'yesNo' ? null : [itself];
}

/** The text itself is never that of a list further out. */
function found(name: string, scope: Scope): TemplateVariable | undefined {
  const reach = name === '.' ? scope.slice(0, 1) : scope;
  return reach.flat().find((variable) => variable.name === name);
}

/** A list cannot be written as it is. */
function listProblems(name: string, at: number, scope: Scope): TagProblem[] {
  const variable = found(name, scope);
  if (variable?.kind !== 'list' && variable?.kind !== 'texts') return [];
  const item = variable.kind === 'texts' ? '{{.}}' : '…';
  const help = `Write {{#${name}}}${item}{{/${name}}}.`;
  return [{ at, code: 'listAsText', message: `"${name}" is a list`, help }];
}

function nameProblems(name: string, at: number, scope: Scope): TagProblem[] {
  if (found(name, scope) !== undefined) return [];
  const owners = listsWith(name, templateVariables);
  const help =
    owners.length > 0
      ? `It stands inside of ${owners.map((owner) => `{{#${owner}}}`).join(' or ')}.`
      : wordHint(name, namesIn(scope));
  return [{ at, code: 'unknownVariable', message: `There is no variable "${quote(name)}" here`, help }];
}

function namesIn(scope: Scope): string[] {
  return [...new Set(scope.flat().map(({ name }) => name))];
}

/** The lists at the root whose items have a variable, at once or in a list of theirs. */
function listsWith(name: string, variables: readonly TemplateVariable[]): string[] {
  return variables
    .filter(({ items = [] }) => items.some((item) => item.name === name))
    .map((variable) => variable.name);
}
