/** Why a bench sheet cannot be read or reduced at all, and what to do about it. */
export interface CannotReduce {
  readonly reason: string;
  readonly help: string;
}
