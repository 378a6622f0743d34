import type { RegistryDiff } from '../../decisions/diff/diff-registries.ts';

/** A comparison with what the forms of its report need besides. */
export interface DiffReport {
  readonly diff: RegistryDiff;
  /** What the user calls the two sides. */
  readonly base: string;
  readonly head: string;
  /** Text of a file of the changed side, for the line of a finding. */
  readonly textOf: (file: string) => string | undefined;
}
