/** A machine with one of its nozzles and a filament, under a policy. */
export interface TableName {
  readonly machine: string;
  readonly nozzle: string;
  readonly filament: string;
  readonly policy: string;
}
