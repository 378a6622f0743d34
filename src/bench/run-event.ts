import type { Trial } from '../registry/generated/documents.ts';

/** Something that happened during a run and may have ended it. */
export type RunEvent = NonNullable<Trial['events']>[number];

/** An event as a plot shows it: a line across at a place on the x axis. */
export interface EventMark {
  /** In the canonical unit of the axis. */
  readonly at: number;
  /** `drive stripped the filament`. */
  readonly words: string;
  readonly style: 'dashDotted' | 'dotted';
}
