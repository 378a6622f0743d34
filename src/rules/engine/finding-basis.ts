import type { Finding } from '../../registry/finding.ts';

/** A place that a finding rests on besides its own: a value that it compares with, readings that it calculates from. */
export interface BlamedPlace {
  readonly file: string;
  readonly pointer: string;
}

/** What is known of a finding besides what a report shows. */
export interface FindingBasis {
  /** Path of the file of the document that was judged; a finding in a sheet belongs to its trial. */
  readonly owner: string;
  readonly blames: readonly BlamedPlace[];
}

/** A finding with what it rests on. */
export interface Based extends FindingBasis {
  readonly finding: Finding;
}
