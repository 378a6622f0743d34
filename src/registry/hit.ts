import type { Kind } from './kind.ts';
import type { Path } from './shape.ts';
import type { SourceText } from './source-text.ts';

/** A place that a hit rests on besides its own: in the same document, or in one that is named. */
export interface Blame {
  readonly of?: { readonly kind: Kind; readonly id: string };
  readonly path: Path;
}

/** What a rule has found, before it is given a file and a place in the text. */
export interface Hit {
  readonly path: Path;
  /** Whether the key or the value at the path is meant. */
  readonly part: 'key' | 'value';
  readonly message: string;
  readonly found?: string;
  readonly allowed?: string;
  readonly source?: string;
  readonly help?: string;
  /** Where that place has a finding of its own, this one follows from it and is told with it. */
  readonly blames?: readonly Blame[];
  /** Where the cause stands in another file than the document itself: a line of a CSV file beside it. */
  readonly elsewhere?: { readonly source: SourceText; readonly line: number };
}
