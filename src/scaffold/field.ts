import { type FieldSchema, followReference, type SchemaFiles } from './schema-part.ts';

/** What is written at a place: one scalar, keys of their own, a list of such, a list of scalars, or statements. */
type FieldForm = 'text' | 'number' | 'truth' | 'group' | 'groups' | 'list' | 'statements';

/** One key of a kind of document, as its schema describes it. */
export interface Field {
  readonly key: string;
  readonly form: FieldForm;
  readonly isMandatory: boolean;
  /** Whether it is asked for, though a document can do without. */
  readonly isAsked?: true;
  /** What it means, a sentence. */
  readonly description: string;
  /** What may stand there, a sentence; empty where the description says all. */
  readonly allowed: string;
  /** The words that may stand there; empty where the choice is open. */
  readonly choices: readonly string[];
  readonly example: unknown;
  /** What stands there unless something else is asked for. */
  readonly preset: unknown;
  /** The keys inside of a group, of each entry of groups, or of a statement. */
  readonly fields: readonly Field[];
}

/** The fields of a kind of document, in the order of its schema. `file` names its schema among the files. */
export function fieldsOf(file: string, files: SchemaFiles): readonly Field[] {
  return fieldsIn(files[file] ?? {}, file, files);
}

function fieldsIn(schema: FieldSchema, file: string, files: SchemaFiles): Field[] {
  return Object.entries(schema.properties ?? {}).map(([key, property]) =>
    fieldOf(key, property, schema.required?.includes(key) ?? false, file, files),
  );
}

function fieldOf(
  key: string,
  property: FieldSchema,
  isMandatory: boolean,
  file: string,
  files: SchemaFiles,
): Field {
  const followed = followReference(property, file, files);
  // The schemas ship with the program, and a test follows every reference in them.
  if (!followed.ok) throw new Error(followed.error.message);
  const { own, target, definition, file: within } = followed.value;
  const items = own.items === undefined ? null : followReference(own.items, within, files);
  const item = items?.ok ? items.value : null;
  const inner = item?.own.properties === undefined ? own : item.own;
  const form = formOf(own, item?.own ?? null, definition);
  const fields = fieldsIn(inner, item?.file ?? within, files);
  return {
    key,
    form,
    isMandatory,
    description: own.description ?? '',
    allowed: allowedText(own, target, form, fields),
    choices: choicesOf(item?.own.enum === undefined ? own : item.own),
    example: own.examples?.[0],
    preset: own.const ?? own.default,
    fields,
  };
}

function formOf(schema: FieldSchema, item: FieldSchema | null, definition: string | null): FieldForm {
  if (schema.properties !== undefined) return 'group';
  if (definition?.endsWith('Statements')) return 'statements';
  if (item !== null) return item.properties === undefined ? 'list' : 'groups';
  if (schema.type === 'boolean') return 'truth';
  return schema.type === 'number' || schema.type === 'integer' ? 'number' : 'text';
}

function choicesOf(schema: FieldSchema): readonly string[] {
  if (schema.type === 'boolean' && schema.const === undefined) return ['true', 'false'];
  return (schema.enum ?? []).map(String);
}

function allowedText(
  own: FieldSchema,
  target: FieldSchema | null,
  form: FieldForm,
  fields: readonly Field[],
): string {
  if (form === 'statements') return fields.find(({ key }) => key === 'value')?.allowed ?? '';
  const choices = choicesOf(own);
  if (choices.length > 0) return `One of: ${choices.join(', ')}.`;
  const meaning = target?.description ?? '';
  return meaning === own.description ? '' : meaning;
}

/** The field at a way of keys; steps into lists may be left out or be numbers. Null where there is no such key. */
export function fieldAt(fields: readonly Field[], way: readonly string[]): Field | null {
  const [key, ...rest] = way.filter((step) => !/^\d+$/.test(step));
  const field = fields.find((each) => each.key === key) ?? null;
  return field === null || rest.length === 0 ? field : fieldAt(field.fields, rest);
}
