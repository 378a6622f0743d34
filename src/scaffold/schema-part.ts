import { type Problem, type Result, refusal, success } from '../result.ts';

/** The part of a JSON Schema (draft-07) that scaffolds and questions are made from. */
export interface FieldSchema {
  readonly $ref?: string;
  readonly title?: string;
  readonly description?: string;
  readonly examples?: readonly unknown[];
  readonly default?: unknown;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly type?: string;
  readonly properties?: Readonly<Record<string, FieldSchema>>;
  readonly required?: readonly string[];
  readonly items?: FieldSchema;
  readonly definitions?: Readonly<Record<string, FieldSchema>>;
}

/** The schemas of a registry by the names of their files, `filament.schema.json` for instance. */
export type SchemaFiles = Readonly<Record<string, FieldSchema>>;

/** A schema with its reference followed: what stands beside the reference wins over what it points at. */
interface FollowedSchema {
  readonly own: FieldSchema;
  /** The definition pointed at, with the reference that led there; null where there is no reference. */
  readonly target: FieldSchema | null;
  /** Name of the definition, `lengthRange` for instance. */
  readonly definition: string | null;
  /** Name of the file that relative references inside start from. */
  readonly file: string;
}

/** Follows `common.schema.json#/definitions/date`, or `#/definitions/date` inside of a file, to its end. */
export function followReference(
  schema: FieldSchema,
  file: string,
  files: SchemaFiles,
): Result<FollowedSchema, Problem<'noDefinition'>> {
  if (schema.$ref === undefined) return success({ own: schema, target: null, definition: null, file });
  const [path = '', pointer = ''] = schema.$ref.split('#');
  const name = path === '' ? file : path;
  const definition = pointer.replace('/definitions/', '');
  const target = files[name]?.definitions?.[definition];
  if (target === undefined) {
    return refusal('noDefinition', `${schema.$ref} in ${file}: no such definition`, 'Correct the reference.');
  }
  const further = followReference(target, name, files);
  if (!further.ok) return further;
  const { target: last } = further.value;
  return success({
    own: { ...last, ...target, ...schema },
    target: last ?? target,
    definition: further.value.definition ?? definition,
    file: further.value.file,
  });
}
