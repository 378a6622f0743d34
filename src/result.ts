/**
 * An outcome that a user's input can decide: a value, or the reason why there is none.
 * Errors that a user can cause travel as values; an exception means a bug.
 */
export type Result<Value, Failure> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly error: Failure };

/** Why there is no value. The codes of a function are a closed union, so that programs can branch on them. */
export interface Problem<Code extends string = string> {
  /** Stable name of what is wrong, such as `unknownMachine`. */
  readonly code: Code;
  /** What is wrong, with what was found; without a full stop. */
  readonly message: string;
  /** What to do about it, in sentences; empty where there is nothing to do. */
  readonly help: string;
}

export function success<Value>(value: Value): { readonly ok: true; readonly value: Value } {
  return { ok: true, value };
}

export function failure<Failure>(error: Failure): { readonly ok: false; readonly error: Failure } {
  return { ok: false, error };
}

/** The failure of a problem: its code, what is wrong, and what to do. */
export function refusal<const Code extends string>(
  code: Code,
  message: string,
  help: string,
): { readonly ok: false; readonly error: Problem<Code> } {
  return failure({ code, message, help });
}
