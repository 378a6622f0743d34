import type { Kind } from '../registry/kind.ts';
import { annotatedLines, proseLines } from './annotate.ts';
import type { Answers } from './answers.ts';
import { type Field, fieldsOf } from './field.ts';
import type { SchemaFiles } from './schema-part.ts';

/** What a new profile is made of. */
export interface ScaffoldRequest {
  readonly kind: Kind;
  /** The fields of the kind; those of its schema unless something narrower is known. */
  readonly fields?: readonly Field[];
  readonly answers: Answers;
  /** Path from the file to its schema, with `/` between folders. */
  readonly schemaPath: string;
}

/**
 * The text of a new document: every field of its kind with meaning, duty, what may stand there and an example,
 * what has been answered as values, the rest as comments.
 */
export function formatNewProfile(request: ScaffoldRequest, files: SchemaFiles): string {
  const { kind, answers, schemaPath } = request;
  const file = schemaFileOf(kind);
  const fields = request.fields ?? fieldsOf(file, files);
  const { title = kind, description = '' } = files[file] ?? {};
  const header = [
    `# yaml-language-server: $schema=${schemaPath}`,
    '#',
    ...proseLines(`${title}. ${description}`),
    '#',
    ...proseLines(
      'A line that starts with # and no blank is an example: to state something, remove the # and write your value. Delete what you do not know. `meltbounds check` says what is missing or wrong.',
    ),
    ...statementGuide(fields),
  ];
  const body = fields.map((field) => annotatedLines(field, answers[field.key], '').join('\n'));
  return `${header.join('\n')}\n\n${body.join('\n\n')}\n`;
}

/** Name of the schema of a kind among the schema files. */
export function schemaFileOf(kind: Kind): string {
  return `${kind}.schema.json`;
}

/** What a statement may hold, once for all of them. */
function statementGuide(fields: readonly Field[]): string[] {
  const statements = findStatements(fields);
  if (statements === null) return [];
  return [
    '#',
    '# Each statement holds:',
    ...statements.fields.flatMap(({ key, isMandatory, description, choices, fields: inner }) => [
      ...proseLines(
        `- ${key}${isMandatory ? ' (mandatory)' : ''}: ${description}${
          choices.length > 1 ? ` One of: ${choices.join(', ')}.` : ''
        }${inner.length > 0 ? ` Keys: ${inner.map((each) => each.key).join(', ')}.` : ''}`,
      ),
    ]),
  ];
}

function findStatements(fields: readonly Field[]): Field | null {
  for (const field of fields) {
    const found = field.form === 'statements' ? field : findStatements(field.fields);
    if (found !== null) return found;
  }
  return null;
}
