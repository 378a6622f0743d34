/** The part of a JSON Schema that messages quote. */
export interface SchemaPart {
  readonly description?: string;
  readonly examples?: readonly unknown[];
  readonly properties?: Readonly<Record<string, SchemaPart>>;
  readonly enum?: readonly unknown[];
}

/** An error as the compiled validators report it (the form of Ajv with `verbose`). */
export interface ShapeError {
  readonly keyword: string;
  /** JSON pointer into the document. */
  readonly instancePath: string;
  readonly params: Readonly<Record<string, unknown>>;
  readonly parentSchema: SchemaPart;
  readonly data: unknown;
}

/** A validator compiled from a schema: true, or false with its errors set beside it. */
export interface ShapeValidator {
  (value: unknown): boolean;
  readonly errors?: readonly ShapeError[] | null;
}
