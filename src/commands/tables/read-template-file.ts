import { basename } from 'node:path';
import { type ReadProblem, readText } from '../../host/read-text.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import type { SpeedTable } from '../../tables/derive/speed-table.ts';
import {
  escapeOfName,
  extensionOf,
  formatTableByTemplate,
  readTemplate,
  type Template,
  type TemplateProblem,
} from '../../tables/template/fill-template.ts';
import { tableFileName } from '../../tables/write/table-files.ts';
import type { ValueEscape } from '../../text/escape.ts';
import { printable } from '../../text/printable.ts';
import { problemLine } from '../../text/problem-text.ts';

/** A template of the user with what its values are escaped for. */
export interface TemplateFile {
  readonly template: Template;
  readonly target: ValueEscape;
  /** The name of the file without its folder. */
  readonly name: string;
}

const templateKind = { name: 'template', mostBytes: 800_000 } as const;

/** Lines of problems that are shown at most. */
const mostProblems = 10;

/** Reads a template of the user. Problems: it cannot be read, is no text, or has tags that mean nothing. */
export function readTemplateFile(
  path: string,
  cwd: string,
  target?: ValueEscape,
): Result<TemplateFile, ReadProblem | Problem<'wrongTemplate'>> {
  const text = readText(path, cwd, templateKind);
  if (!text.ok) return text;
  const template = readTemplate(text.value);
  if (!template.ok) return wrongTemplate(path, template.error);
  const name = basename(path);
  return success({ template: template.value, target: target ?? escapeOfName(name), name });
}

/** The problems of a template, each on a line of its own with its place and what to do. */
function wrongTemplate(path: string, problems: readonly TemplateProblem[]) {
  const shown = printable(path);
  const rest = problems.length - mostProblems;
  const lines = problems
    .slice(0, mostProblems)
    .map((problem) => `${shown}${placeText(problem)}: ${problemLine(problem)}`);
  return refusal(
    'wrongTemplate',
    [...lines, ...(rest > 0 ? [`… and ${rest} more.`] : [])].join('\n'),
    'docs/templates.md lists the variables.',
  );
}

function placeText({ line, column }: TemplateProblem): string {
  return line === null ? '' : `:${line}:${column}`;
}

/** The filled template as a file, named after the table and the template. */
export function filledFile(
  { template, target, name }: TemplateFile,
  table: SpeedTable,
): Result<readonly [name: string, text: string], Problem<'tooMuchOutput'>> {
  const filled = formatTableByTemplate(template, table, target);
  if (!filled.ok) return filled;
  const stem = name.replace(/\.mustache$/i, '').replace(/\.[^.]*$/, '');
  const safe = stem.replace(/[^A-Za-z0-9._-]+/g, '-').slice(0, 24) || 'template';
  return success([`${tableFileName(table)}--${safe}.${extensionOf(name)}`, filled.value]);
}
