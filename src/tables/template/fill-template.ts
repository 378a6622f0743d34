import mustache, { type TemplateSpans } from 'mustache';
import { failure, type Problem, type Result, refusal, success } from '../../result.ts';
import { escapeValue, type ValueEscape } from '../../text/escape.ts';
import type { SpeedTable } from '../derive/speed-table.ts';
import { templateProblems } from './check-template.ts';
import { mostOutput } from './template-size.ts';
import { templateView } from './template-view.ts';

/** Characters of a template and of what it writes, at most; a sheet needs a few thousand. */
const most = { template: 200_000, output: 4_000_000 } as const;

/** A template whose every variable is known. Its types name no type of the library, which brings none of its own. */
export interface Template {
  readonly text: string;
}

/** What is wrong with a template. The codes of tags stand here too, since the file that finds them names types of the library. */
type TemplateCode = 'otherFile' | 'unknownVariable' | 'listAsText' | 'nestedTooDeep' | 'tooLong' | 'syntax';

/** What is wrong with a template, and where. */
export interface TemplateProblem extends Problem<TemplateCode> {
  /** Counted from 1; null for the whole template. */
  readonly line: number | null;
  readonly column: number | null;
}

/**
 * Reads a template in the logic-less language Mustache. The problems name every unknown variable, and every tag that
 * reads another file.
 */
export function readTemplate(text: string): Result<Template, readonly TemplateProblem[]> {
  if (text.length > most.template) {
    const message = `A template holds ${most.template} characters at most, and this one has ${text.length}`;
    return failure([{ code: 'tooLong', message, help: 'Shorten it.', ...nowhere }]);
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
    : failure(problems.map(({ at, ...problem }) => ({ ...problem, ...placeOf(text, at) })));
}

/** Fills a template with a table. Problem: it would write more than any sheet needs. */
export function formatTableByTemplate(
  { text }: Template,
  table: SpeedTable,
  target: ValueEscape,
): Result<string, Problem<'tooMuchOutput'>> {
  const view = templateView(table);
  const size = mostOutput(mustache.parse(text), [[view]]);
  if (size > most.output) {
    return refusal(
      'tooMuchOutput',
      `The template could write ${size.toPrecision(2)} characters, more than the ${most.output} that are allowed`,
      'Do not repeat lists inside of lists.',
    );
  }
  const writer = new mustache.Writer();
  return success(
    writer.render(text, view, undefined, { escape: (value: unknown) => escapeValue(target, value) }),
  );
}

const nowhere = { line: null, column: null } as const;

/** The library tells the index in its message. */
function syntaxProblem(text: string, error: unknown): TemplateProblem {
  const thrown = error instanceof Error ? error.message : String(error);
  const [, message = thrown, index] = /^(.*) at (\d+)$/s.exec(thrown) ?? [];
  const place = index === undefined ? nowhere : placeOf(text, Number(index));
  const help = 'A tag is written {{name}}; a section {{#name}} … {{/name}}.';
  return { code: 'syntax', message, help, ...place };
}

function placeOf(text: string, at: number): { readonly line: number; readonly column: number } {
  const lines = text.slice(0, at).split('\n');
  return { line: lines.length, column: (lines.at(-1) ?? '').length + 1 };
}

/** The escape that the name of a template asks for: `sheet.xml` and `sheet.xml.mustache` that of XML. */
export function escapeOfName(fileName: string): ValueEscape {
  const extension = extensionOf(fileName);
  if (extension === 'html' || extension === 'htm') return 'html';
  return extension === 'xml' || extension === 'csv' ? extension : 'none';
}

/** What a filled template is called at its end: `ini` for `sheet.ini` and for `sheet.ini.mustache`, else `txt`. */
export function extensionOf(fileName: string): string {
  const [, extension] = /\.([a-z0-9]{1,12})$/i.exec(fileName.replace(/\.mustache$/i, '')) ?? [];
  return extension?.toLowerCase() ?? 'txt';
}
