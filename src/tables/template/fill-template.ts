import mustache, { type TemplateSpans } from 'mustache';
import { failure, type Result, success } from '../../result.ts';
import type { SpeedTable } from '../derive/speed-table.ts';
import { templateProblems } from './check-template.ts';
import { escapeValue, type TemplateEscape } from './template-escape.ts';
import { mostOutput } from './template-size.ts';
import { templateView } from './template-view.ts';

/** Characters of a template and of what it writes, at most; a sheet needs a few thousand. */
const most = { template: 200_000, output: 4_000_000 } as const;

/** A template whose every variable is known. Its types name no type of the library, which brings none of its own. */
export interface Template {
  readonly text: string;
}

/**
 * Reads a template in the logic-less language Mustache. The errors name every unknown variable, and every tag that reads
 * another file, with line and column: `3:5: …`.
 */
export function readTemplate(text: string): Result<Template, string[]> {
  if (text.length > most.template) {
    return failure([`A template holds ${most.template} characters at most; this one has ${text.length}.`]);
  }
  let spans: TemplateSpans;
  try {
    spans = mustache.parse(text);
  } catch (error) {
    return failure([syntaxProblem(text, error)]);
  }
  const problems = templateProblems(spans);
  return problems.length === 0
    ? success({ text })
    : failure(problems.map(({ at, message }) => `${placeOf(text, at)}: ${message}`));
}

/** Fills a template with a table. The error: it would write more than any sheet needs. */
export function fillTemplate(
  { text }: Template,
  table: SpeedTable,
  target: TemplateEscape,
): Result<string, string> {
  const view = templateView(table);
  const size = mostOutput(mustache.parse(text), [[view]]);
  if (size > most.output) {
    return failure(
      `The template could write ${size.toPrecision(2)} characters, more than the ${most.output} that are allowed: it repeats lists inside of lists.`,
    );
  }
  const writer = new mustache.Writer();
  return success(
    writer.render(text, view, undefined, { escape: (value: unknown) => escapeValue(target, value) }),
  );
}

/** The library tells the index in its message. */
function syntaxProblem(text: string, error: unknown): string {
  const message = error instanceof Error ? error.message : String(error);
  const [, what = message, index] = /^(.*) at (\d+)$/s.exec(message) ?? [];
  const place = index === undefined ? '' : `${placeOf(text, Number(index))}: `;
  return `${place}${what}. A tag is written {{name}}; a section {{#name}} … {{/name}}.`;
}

function placeOf(text: string, at: number): string {
  const lines = text.slice(0, at).split('\n');
  return `${lines.length}:${(lines.at(-1) ?? '').length + 1}`;
}
