import type { TemplateSpans } from 'mustache';
import { nearestWord } from '../../text/nearest-word.ts';
import { quote } from '../../text/quote.ts';
import { type TemplateVariable, templateVariables } from './template-variables.ts';

/** What is wrong with a template, and the place in it as an index of characters. */
export interface TemplateProblem {
  readonly at: number;
  readonly message: string;
}

/** Sections inside of sections; more than any sheet needs. */
const deepest = 12;

/** Looks at every tag of a template: unknown variables, other files, sections too deep. In the order of the text. */
export function templateProblems(spans: TemplateSpans): TemplateProblem[] {
  return problemsIn(spans, [templateVariables], 0);
}

/** The variables in reach, those of the innermost list first. */
type Scope = readonly (readonly TemplateVariable[])[];

function problemsIn(spans: TemplateSpans, scope: Scope, depth: number): TemplateProblem[] {
  return spans.flatMap((span): TemplateProblem[] => {
    const [type, name, at] = span;
    switch (type) {
      case 'text':
      case '!':
      case '=':
        return [];
      case '>':
        return [
          { at, message: `A template reads no other file; write what "${quote(name)}" holds into it.` },
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
): TemplateProblem[] {
  const problems = nameProblems(name, at, scope);
  if (problems.length > 0) return problems;
  if (depth >= deepest) return [{ at, message: `Sections stand at most ${deepest} deep in each other.` }];
  const variable = found(name, scope);
  const items = type === '#' ? (variable?.items ?? itemsOfTexts(variable)) : null;
  return Array.isArray(inner) ? problemsIn(inner, items === null ? scope : [items, ...scope], depth + 1) : [];
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
function listProblems(name: string, at: number, scope: Scope): TemplateProblem[] {
  const variable = found(name, scope);
  if (variable?.kind !== 'list' && variable?.kind !== 'texts') return [];
  const item = variable.kind === 'texts' ? '{{.}}' : '…';
  return [{ at, message: `"${name}" is a list; write {{#${name}}}${item}{{/${name}}}.` }];
}

function nameProblems(name: string, at: number, scope: Scope): TemplateProblem[] {
  if (found(name, scope) !== undefined) return [];
  const shown = quote(name);
  const owners = listsWith(name, templateVariables);
  const nearest = nearestWord(
    name,
    scope.flat().map((variable) => variable.name),
  );
  const hint =
    owners.length > 0
      ? `It stands inside of ${owners.map((owner) => `{{#${owner}}}`).join(' or ')}.`
      : nearest !== null
        ? `Did you mean "${nearest}"?`
        : `There are: ${namesIn(scope).join(', ')}.`;
  return [{ at, message: `There is no variable "${shown}" here. ${hint}` }];
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
