import { reduceTrial } from '../../bench/reduce-trial.ts';
import { reducingOnce } from '../../bench/reducing-once.ts';
import type { Finding } from '../../registry/finding.ts';
import type { Hit } from '../../registry/hit.ts';
import type { LoadedRegistry } from '../../registry/load-files.ts';
import type { AnyProfile, ReadDocument } from '../../registry/profile.ts';
import { placeHit } from '../../registry/read-profile.ts';
import { acknowledge, type JudgedFinding } from './acknowledge.ts';
import { additionHits } from './addition-hits.ts';
import { capFindings } from './cap-findings.ts';
import type { Coded, ProfileRule, Rule, RuleContext } from './rule.ts';
import { judgingRules } from './rules.ts';

/** What a check needs to know besides the registry. */
export interface CheckOptions {
  /** Today's date, YYYY-MM-DD: nothing may lie after it. */
  readonly today: string;
  /** Reduces a trial; a caller that checks many versions of one registry passes a function that remembers results. */
  readonly reduce?: typeof reduceTrial;
}

/**
 * Everything that is wrong with a registry: what reading it has shown, and what the rules find that no profile
 * acknowledges. Ordered by file and place.
 */
export function checkRegistry(
  loaded: LoadedRegistry,
  { today, reduce = reduceTrial }: CheckOptions,
): Finding[] {
  const context: RuleContext = {
    registry: loaded.registry,
    today,
    reduce: reducingOnce(loaded.registry, reduce),
  };
  const found = judgingRules.flatMap((rule) =>
    rule.judges === 'document'
      ? loaded.registry.documents.flatMap((document) => placed(rule, document, rule.check(document, context)))
      : loaded.registry.profiles.flatMap((profile) => judged(rule, profile, context)),
  );
  const misread = new Set(loaded.findings.map(({ file }) => file));
  const left = acknowledge(loaded.registry.documents, found, { today, misread });
  return capFindings([...loaded.findings, ...left]);
}

/** What a rule finds in a profile, and in the additions to it: these are judged as the filament that they extend. */
function judged(rule: Coded<ProfileRule>, profile: AnyProfile, context: RuleContext): JudgedFinding[] {
  if (profile.kind === 'addition') return [];
  const own = placed(rule, profile, inText(profile, rule.check(profile, context)));
  if (profile.kind !== 'filament') return own;
  const added = [...additionHits(rule, profile, context)];
  return [...own, ...added.flatMap(({ addition, hit }) => placed(rule, addition, inText(addition, [hit])))];
}

function placed(rule: Rule, { source, yaml }: ReadDocument, hits: Iterable<Hit>): JudgedFinding[] {
  return [...hits].map((hit) => ({
    document: source,
    finding: placeHit({ source: rule.source, ...hit }, source, yaml, rule.code, rule.severity),
  }));
}

/** Hits at places of the data, at the places of the text that those were read from. */
function* inText({ originalPath }: AnyProfile, hits: Iterable<Hit>): Generator<Hit> {
  for (const hit of hits) yield { ...hit, path: originalPath(hit.path) };
}
