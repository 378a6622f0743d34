import type { Severity } from './finding.ts';
import type { Path } from './shape.ts';

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
}

/** A hit with the code and severity of its rule. */
export interface RuledHit extends Hit {
  readonly rule: string;
  readonly severity: Severity;
}
