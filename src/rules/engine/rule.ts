import type { EvidenceContext } from '../../evidence/evidence-context.ts';
import type { Severity } from '../../registry/finding.ts';
import type { Hit } from '../../registry/hit.ts';
import type { Kind } from '../../registry/kind.ts';
import type { Profile, ReadDocument } from '../../registry/profile.ts';

/** What a rule may know besides the profile that it judges. */
interface OwnContext {
  /** Today's date, YYYY-MM-DD. */
  readonly today: string;
}

/** What a rule may look at that reaches farther than the profile. */
export interface RuleContext extends OwnContext, EvidenceContext {}

/**
 * How far a rule looks: at nothing but the document itself; at its neighbours, which are looked up by their ids, and at
 * what their trials reduce to; or at the whole registry, by an index that is made once.
 */
export type Reach = 'profile' | 'neighbours' | 'registry';

/** How a rule finds breaches. Written as a method, so that a rule of some kinds is a rule; the engine hands it no others. */
type Check<Judged> =
  | { readonly reach: 'profile'; check(judged: Judged, context: OwnContext): Iterable<Hit> }
  | { readonly reach: 'neighbours' | 'registry'; check(judged: Judged, context: RuleContext): Iterable<Hit> };

/**
 * A documented example: keys that replace those of a sound profile of the kind. `bad` raises the rule's finding and
 * no other, `good` raises none; a test runs both.
 */
export interface RuleExample {
  readonly kind: Kind;
  readonly bad: string;
  readonly good: string;
  /** The keys make a second profile, a copy of the sound one at the path of its id, instead of changing the first. */
  readonly copied?: true;
}

/** What the documentation of a rule shows. */
interface RuleText {
  readonly severity: Severity;
  /** What must hold, in one line. */
  readonly statement: string;
  /** What goes wrong where it does not hold. */
  readonly rationale: string;
  /** Where the rule or its limit comes from. */
  readonly source: string;
  /** The formula by which the rule judges values, with its symbols named. */
  readonly formula?: string;
  /** Missing only where no profile can show a breach, such as a file that cannot be read. */
  readonly example?: RuleExample;
}

/** Judges any document that could be read, even where its content does not fit the schema. */
export type DocumentRule = RuleText &
  Check<ReadDocument> & { readonly judges: 'document'; readonly example: RuleExample };

/** Judges profiles of some kinds whose content fits the schema, in canonical units. */
export type ProfileRule<OfKind extends Kind = Kind> = RuleText &
  Check<{ [Each in OfKind]: Profile<Each> }[OfKind]> & {
    readonly judges: 'profile';
    /** The kinds that it looks at; all where it names none. */
    readonly kinds?: readonly OfKind[];
    readonly example: RuleExample;
  };

/** Explains an error of form; reading the files finds it (`registry/`), or the count of findings in a file does. */
export interface FormRule extends RuleText {
  readonly judges: 'form';
  readonly severity: 'error';
}

/** Explains what is wrong with an acknowledgement; `acknowledge.ts` finds it. */
export interface AcknowledgementRule extends RuleText {
  readonly judges: 'acknowledgement';
  readonly example: RuleExample;
}

/** What a file of a class of rules exports as `rule`: what must hold, why, by which source, and how a breach is seen. */
export type RuleFile = DocumentRule | ProfileRule | FormRule | AcknowledgementRule;

/** A rule with its code, `CLASS/NAME`, which is the path of its file below `src/rules/` and stable over releases. */
export type Coded<T> = T & { readonly code: string };

/** One rule of the list. */
export type Rule = Coded<RuleFile>;
