import {
  type Acknowledgement,
  accepts,
  acknowledgementsOf,
  canBeAcknowledged,
} from '../../evidence/acknowledgement.ts';
import type { Finding } from '../../registry/finding.ts';
import { groupedBy } from '../../registry/grouped-by.ts';
import type { Hit } from '../../registry/hit.ts';
import { presentCode } from '../../registry/migrations/renamed-rules.ts';
import type { ReadDocument } from '../../registry/profile.ts';
import { placeHit } from '../../registry/read-profile.ts';
import type { SourceText } from '../../registry/source-text.ts';
import { quote } from '../../text/quote.ts';
import { wordHint } from '../../text/unknown-word.ts';
import type { RuleCode } from '../generated/rule-files.ts';
import { judgingRules, ruleOf, rules } from './rules.ts';

/** A finding of a rule with the document that was judged, which may be another one than that of its place. */
export interface JudgedFinding {
  readonly document: SourceText;
  readonly finding: Finding;
}

interface AcknowledgeOptions {
  /** Today's date, YYYY-MM-DD. */
  readonly today: string;
  /** Paths of files with errors of form: rules may have found nothing where nothing could be read. */
  readonly misread: ReadonlySet<string>;
}

/**
 * Leaves out the findings that their documents acknowledge, each up to and including a date, and adds what is wrong
 * with the acknowledgements themselves.
 */
export function acknowledge(
  documents: readonly ReadDocument[],
  found: readonly JudgedFinding[],
  options: AcknowledgeOptions,
): Finding[] {
  const accepted = new Set<Finding>();
  const faults: Finding[] = [];
  const findingsOf = groupedBy(found, ({ document }) => document.path);
  for (const document of documents) {
    const own = (findingsOf.get(document.source.path) ?? []).map(({ finding }) => finding);
    for (const entry of acknowledgementsOf(document)) {
      const matching = own.filter((finding) => accepts(entry, finding, options.today));
      for (const finding of matching) accepted.add(finding);
      const fault = matching.length > 0 ? null : faultOf(entry, document, options);
      if (fault !== null) faults.push(fault);
    }
  }
  return [...found.map(({ finding }) => finding).filter((finding) => !accepted.has(finding)), ...faults];
}

function faultOf(
  entry: Acknowledgement,
  document: ReadDocument,
  options: AcknowledgeOptions,
): Finding | null {
  if (!rules.some(({ code }) => code === entry.rule)) {
    return placed('acknowledgement/unknown-rule', unknownRule(entry), document);
  }
  if (!canBeAcknowledged(entry.rule)) {
    return placed('acknowledgement/not-allowed', notAllowed(entry), document);
  }
  if (entry.until < options.today) return placed('acknowledgement/expired', expired(entry), document);
  return options.misread.has(document.source.path)
    ? null
    : placed('acknowledgement/unused', unused(entry), document);
}

function placed(code: RuleCode, hit: Hit, document: ReadDocument): Finding {
  const { severity, source } = ruleOf(code);
  return placeHit({ source, ...hit }, document.source, document.yaml, code, severity);
}

function unknownRule({ index, rule }: Acknowledgement): Hit {
  const now = presentCode(rule);
  const codes = judgingRules.map(({ code }) => code);
  const guess = wordHint(rule, codes, '`meltbounds rules` lists them.');
  return {
    path: ['acknowledged', index, 'rule'],
    part: 'value',
    message: `There is no rule "${quote(rule)}"`,
    found: quote(rule),
    allowed: 'the code of a rule',
    help: now === null ? guess : `Run \`meltbounds migrate\`: this rule is called "${now}" now.`,
  };
}

function notAllowed({ index, rule }: Acknowledgement): Hit {
  return {
    path: ['acknowledged', index, 'rule'],
    part: 'value',
    message: `"${rule}" cannot be accepted: the readings or the interval of the limit refute it`,
    found: rule,
    allowed: 'rules that judge what is unusual',
    help: 'Correct the limit to what its readings support, or measure again, and remove this entry.',
  };
}

function expired({ index, rule, until }: Acknowledgement): Hit {
  return {
    path: ['acknowledged', index, 'until'],
    part: 'value',
    message: `"${quote(rule)}" was accepted here until ${quote(until)}, and is not any longer`,
    found: quote(until),
    allowed: 'a day that is still to come',
    help: 'Measure again and correct the value, or have a reviewer accept it up to a new date.',
  };
}

function unused({ index, rule, at }: Acknowledgement): Hit {
  const hit = {
    path: ['acknowledged', index],
    part: 'value',
    found: quote(rule),
    allowed: 'a rule that finds something here',
  } as const;
  if (judgingRules.some(({ code }) => code === rule)) {
    const place = at === '' ? 'anywhere in this profile' : `at ${quote(at)}`;
    return {
      ...hit,
      message: `"${rule}" finds nothing ${place}, so there is nothing to accept`,
      help: 'Remove the entry, or correct its place: a list item is counted from 0.',
    };
  }
  return {
    ...hit,
    message: `"${rule}" cannot be accepted: only findings of rules that judge readable values can`,
    help: 'Fix what is wrong, and remove the entry.',
  };
}
