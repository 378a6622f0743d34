import { acceptedFindings, isAtPlace, namesFound } from '../../evidence/accepted-findings.ts';
import {
  type Acknowledgement,
  acknowledgementsOf,
  lastAcceptableDay,
  type NeverAccepted,
  neverAccepted,
} from '../../evidence/acknowledgement.ts';
import type { AcknowledgedFinding, Finding } from '../../registry/finding.ts';
import { groupedBy } from '../../registry/grouped-by.ts';
import type { Blame, Hit } from '../../registry/hit.ts';
import { presentCode } from '../../registry/migrations/renamed-rules.ts';
import type { ReadDocument } from '../../registry/profile.ts';
import { placeHit } from '../../registry/read-profile.ts';
import { quote } from '../../text/quote.ts';
import { wordHint } from '../../text/unknown-word.ts';
import type { RuleCode } from '../generated/rule-files.ts';
import { judgingRules, ruleOf, rules } from './rules.ts';

/** A finding of a rule with the document that was judged, which may be another one than that of its place. */
export interface JudgedFinding {
  readonly document: ReadDocument;
  readonly finding: Finding;
  /** The places that the finding rests on besides its own. */
  readonly blames: readonly Blame[];
}

interface AcknowledgeOptions {
  /** Today's date, YYYY-MM-DD. */
  readonly today: string;
  /** Paths of files with errors of form: rules may have found nothing where nothing could be read. */
  readonly misread: ReadonlySet<string>;
}

/** What rules have found, apart from what reviewers have accepted of it. */
interface Acknowledged {
  /** What nobody has accepted, and what is wrong with the acknowledgements themselves. */
  readonly findings: readonly Finding[];
  readonly acknowledged: readonly AcknowledgedFinding[];
}

/**
 * Sets apart the findings that their documents acknowledge, each up to and including a date, and adds what is wrong
 * with the acknowledgements themselves.
 */
export function acknowledge(
  documents: readonly ReadDocument[],
  found: readonly JudgedFinding[],
  options: AcknowledgeOptions,
): Acknowledged {
  const accepted = new Map<Finding, Acknowledgement>();
  const faults: Finding[] = [];
  const findingsOf = groupedBy(found, ({ document }) => document.source.path);
  for (const document of documents) {
    const entries = acknowledgementsOf(document);
    if (entries.length === 0) continue;
    const own = (findingsOf.get(document.source.path) ?? []).map(({ finding }) => finding);
    const here = acceptedFindings(document, own, options.today);
    for (const [finding, entry] of here) accepted.set(finding, entry);
    const places = new Set([...here.values()].map(placeOfEntry));
    const taken = new Set(here.keys());
    for (const entry of entries) {
      const fault = places.has(placeOfEntry(entry)) ? null : faultOf(entry, document, own, taken, options);
      if (fault !== null) faults.push(fault);
    }
  }
  const findings = found.map(({ finding }) => finding);
  return {
    findings: [...findings.filter((finding) => !accepted.has(finding)), ...faults],
    acknowledged: findings.flatMap((finding) => acknowledgedFinding(finding, accepted.get(finding))),
  };
}

/** Entries that say the same of one place accept the same, in their turn. */
function placeOfEntry({ rule, at, found }: Acknowledgement): string {
  return JSON.stringify([rule, at, found]);
}

function acknowledgedFinding(finding: Finding, entry: Acknowledgement | undefined): AcknowledgedFinding[] {
  return entry === undefined ? [] : [{ ...finding, reason: entry.reason, until: entry.until }];
}

function faultOf(
  entry: Acknowledgement,
  document: ReadDocument,
  own: readonly Finding[],
  accepted: ReadonlySet<Finding>,
  { today, misread }: AcknowledgeOptions,
): Finding | null {
  if (!rules.some(({ code }) => code === entry.rule)) {
    return placed('acknowledgement/unknown-rule', unknownRule(entry), document);
  }
  const refusal = refusedHit(entry);
  if (refusal !== null) return placed('acknowledgement/not-allowed', refusal, document);
  if (entry.until < today) return placed('acknowledgement/expired', expired(entry), document);
  if (entry.until > lastAcceptableDay(today))
    return placed('acknowledgement/too-long', tooLong(entry, today), document);
  return misread.has(document.source.path)
    ? null
    : placed('acknowledgement/unused', unused(entry, own, accepted), document);
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

const neverBecause: Readonly<Record<NeverAccepted, { readonly why: string; readonly help: string }>> = {
  refuted: {
    why: 'the readings or the interval of the limit refute it',
    help: 'Correct the limit to what its readings support, or measure again, and remove this entry.',
  },
  unbounded: {
    why: 'a limit counts for every nozzle, filament or temperature that it does not name',
    help: 'Run `meltbounds check --fix`, which adds what the trial knows, and remove this entry.',
  },
  provenance: {
    why: 'nobody could tell where the value comes from',
    help: 'Name the trial, the source or the reason that the value rests on, and remove this entry.',
  },
  safety: {
    why: 'it is about danger to people, which no reason makes smaller',
    help: 'Correct the value by the manual of the machine and the sheet of the filament, and remove this entry.',
  },
};

/** An entry that nothing could make valid; null for any other. */
function refusedHit({ index, rule, at }: Acknowledgement): Hit | null {
  const never = neverAccepted(rule);
  if (never !== null) {
    const { why, help } = neverBecause[never];
    return {
      path: ['acknowledged', index, 'rule'],
      part: 'value',
      message: `"${rule}" cannot be accepted: ${why}`,
      found: rule,
      allowed: 'rules that judge what is unusual',
      help,
    };
  }
  if (at !== '') return null;
  return {
    path: ['acknowledged', index, 'at'],
    part: 'value',
    message: 'A whole profile cannot be accepted, only what is found at a place in it',
    found: "''",
    allowed: 'a JSON pointer to a key or a statement, such as /meltFlow/1',
    help: 'Write the place that the finding is about.',
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

function tooLong({ index, rule, until }: Acknowledgement, today: string): Hit {
  const last = lastAcceptableDay(today);
  return {
    path: ['acknowledged', index, 'until'],
    part: 'value',
    message: `"${quote(rule)}" is to be accepted until ${quote(until)}, more than twelve months from ${today}`,
    found: quote(until),
    allowed: `a day up to ${last}`,
    help: `Write \`until: '${last}'\` or an earlier day: once a year somebody looks again.`,
  };
}

/** An entry that accepts nothing, and what the rule finds instead. */
function unused(entry: Acknowledgement, own: readonly Finding[], accepted: ReadonlySet<Finding>): Hit {
  const { index, rule, at, found } = entry;
  const hit = { path: ['acknowledged', index], part: 'value', found: quote(rule) } as const;
  if (judgingRules.every(({ code }) => code !== rule)) {
    return {
      ...hit,
      allowed: 'a rule that judges readable values',
      message: `"${rule}" cannot be accepted: only findings of rules that judge readable values can`,
      help: 'Fix what is wrong, and remove the entry.',
    };
  }
  const here = own.filter((finding) => isAtPlace(entry, finding));
  const same = here.filter((finding) => namesFound(entry, finding));
  const free = same.filter((finding) => !accepted.has(finding));
  if (free.length > 0) return ambiguous(entry, free);
  if (same.length > 0) {
    return {
      ...hit,
      allowed: 'one entry for a finding',
      message: `"${rule}" at ${quote(at)} is accepted by another entry already`,
      help: 'Remove one of the two.',
    };
  }
  const [other] = here;
  if (other !== undefined) {
    const now = other.found ?? 'nothing that can be named';
    return {
      path: ['acknowledged', index, 'found'],
      part: 'value',
      message: `Of "${rule}" at ${quote(at)}, "${quote(found)}" was accepted, but "${quote(now)}" is found now`,
      found: quote(found),
      allowed: quote(now),
      help: 'Check the value again; if it is right, write what is found now, with a reason that fits it.',
    };
  }
  return {
    ...hit,
    allowed: 'a rule that finds something here',
    message: `"${rule}" finds nothing at ${quote(at)}, so there is nothing to accept`,
    help: 'Remove the entry, or correct its place.',
  };
}

function ambiguous({ index, rule, at, found }: Acknowledgement, same: readonly Finding[]): Hit {
  const places = [...new Set(same.map(({ pointer }) => pointer))];
  const shown = places.slice(0, 3).map((place) => quote(place));
  const more = places.length > shown.length ? ` and ${places.length - shown.length} more` : '';
  return {
    path: ['acknowledged', index, 'at'],
    part: 'value',
    message: `"${rule}" finds "${quote(found)}" at several places, and an entry accepts one: ${shown.join(', ')}${more}`,
    found: quote(at),
    allowed: 'one of these places',
    help: 'Name the one that is meant. If each is, write an entry for each.',
  };
}
