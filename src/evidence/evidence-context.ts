import type { ReduceById } from '../bench/reducing-once.ts';
import type { Registry } from '../registry/registry.ts';

/** What it takes to check a statement against the readings that it rests on. */
export interface EvidenceContext {
  readonly registry: Registry;
  /** Reduces a trial to its results; each trial once, however many ask. */
  readonly reduce: ReduceById;
  /** Today's date, YYYY-MM-DD: an acknowledgement holds until a date. */
  readonly today: string;
}
