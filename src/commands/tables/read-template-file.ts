import { readFileSync, statSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { failure, type Result, success } from '../../result.ts';
import type { SpeedTable } from '../../tables/derive/speed-table.ts';
import { fillTemplate, readTemplate, type Template } from '../../tables/template/fill-template.ts';
import { escapeOfName, extensionOf, type TemplateEscape } from '../../tables/template/template-escape.ts';
import { type NamedText, tableFileName } from '../../tables/write/table-files.ts';
import { printable } from '../../text/printable.ts';

/** A template of the user with what its values are escaped for. */
export interface TemplateFile {
  readonly template: Template;
  readonly target: TemplateEscape;
  /** The name of the file without its folder. */
  readonly name: string;
}

/** Bytes that are read at most. */
const mostBytes = 800_000;

/** Lines of problems that are shown at most. */
const mostProblems = 10;

/** Reads a template of the user. Errors: it cannot be read, is no text, or has tags that mean nothing. */
export function readTemplateFile(
  path: string,
  cwd: string,
  target?: TemplateEscape,
): Result<TemplateFile, string> {
  const shown = printable(path);
  const text = readText(resolve(cwd, path));
  if (!text.ok) return failure(`--template ${shown}: ${text.error}`);
  const template = readTemplate(text.value);
  if (!template.ok) {
    const rest = template.error.length - mostProblems;
    const lines = template.error.slice(0, mostProblems).map((problem) => `${shown}:${problem}`);
    return failure([...lines, ...(rest > 0 ? [`… and ${rest} more`] : [])].join('\n'));
  }
  const name = basename(path);
  return success({ template: template.value, target: target ?? escapeOfName(name), name });
}

function readText(path: string): Result<string, string> {
  try {
    if (statSync(path).size > mostBytes) return failure('the file is too large for a template.');
    const text = new TextDecoder('utf-8', { fatal: true }).decode(readFileSync(path));
    return success(text);
  } catch (error) {
    if (error instanceof TypeError) return failure('the file is no text in UTF-8; save it as such.');
    const code = error instanceof Error && 'code' in error ? ` (${String(error.code)})` : '';
    return failure(`the file cannot be read${code}; name a template, such as examples/templates/wall.txt.`);
  }
}

/** The filled template as a file, named after the table and the template. */
export function filledFile(
  { template, target, name }: TemplateFile,
  table: SpeedTable,
): Result<NamedText, string> {
  const filled = fillTemplate(template, table, target);
  if (!filled.ok) return filled;
  const stem = name.replace(/\.mustache$/i, '').replace(/\.[^.]*$/, '');
  const safe = stem.replace(/[^A-Za-z0-9._-]+/g, '-') || 'template';
  return success([`${tableFileName(table)}--${safe}.${extensionOf(name)}`, filled.value]);
}
