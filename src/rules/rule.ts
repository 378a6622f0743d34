import type { BenchProblem } from '../bench/bench-problem.ts';
import type { Reduction } from '../bench/reduction.ts';
import type { Severity } from '../registry/finding.ts';
import type { Hit } from '../registry/hit.ts';
import type { AnyProfile, ReadDocument } from '../registry/profile.ts';
import type { Registry } from '../registry/registry.ts';
import type { Result } from '../result.ts';

/** What a rule may look at besides the profile that it judges. */
export interface RuleContext {
  readonly registry: Registry;
  /** Today's date, YYYY-MM-DD. */
  readonly today: string;
  /** Reduces a trial to its results; each trial once, however many rules ask. */
  readonly reduce: (trialId: string) => Result<Reduction, readonly BenchProblem[]>;
}

interface RuleText {
  /** `CLASS/NAME`, stable over releases. */
  readonly code: string;
  readonly severity: Severity;
  /** What must hold, in one line. */
  readonly statement: string;
  /** What goes wrong where it does not hold. */
  readonly rationale: string;
  /** Where the rule or its limit comes from. */
  readonly source: string;
}

/** Judges any document that could be read, even where its content does not fit the schema. */
export interface DocumentRule extends RuleText {
  readonly judges: 'document';
  readonly check: (document: ReadDocument, context: RuleContext) => Iterable<Hit>;
}

/** Judges profiles whose content fits the schema, in canonical units. */
export interface ProfileRule extends RuleText {
  readonly judges: 'profile';
  readonly check: (profile: AnyProfile, context: RuleContext) => Iterable<Hit>;
}

/** One rule: what must hold, why, by which source, and how a breach is seen. */
export type Rule = DocumentRule | ProfileRule;
