import { standingText } from '../../evidence/standing-text.ts';
import { tableCautions } from '../../knowledge/cautions.ts';
import { type Conformance, conformanceNote, conformanceText } from '../../knowledge/conformance.ts';
import { chosenRuleText, type DecisionRule } from '../../knowledge/decision-rule.ts';
import { originBlocks } from '../../knowledge/origin.ts';
import {
  cautions,
  type Document,
  leftColumns,
  list,
  paragraph,
  type Section,
  section,
  table,
} from '../../text/document.ts';
import { capitalised, counted, enumerated } from '../../text/words.ts';
import { shown } from '../../units/wording.ts';
import type { Claim } from './claim.ts';
import { type ClaimEvidence, claimStatusText, type JudgedClaim } from './claim-verdict.ts';
import type { ClaimReport } from './judge-claims.ts';
import { foundText } from './judge-measured.ts';

const claimColumns = leftColumns('claim', 'claimed', 'verdict', 'probability').map((column, index) => ({
  ...column,
  wraps: index === 1,
}));

/** When a claim gets which verdict, by rule. */
const verdictRules: Readonly<Record<DecisionRule, string>> = {
  guardedAcceptance:
    'a claim is held where even the worse end of the 95 % interval meets it (a guard band of the expanded uncertainty: it fails with a probability of 2.5 % at most), not reached where even the better end misses it, and else not contradicted.',
  simpleAcceptance:
    'a claim that the interval reaches is accepted where the measured value meets it and rejected where it misses it (near the claim every second of these verdicts is wrong); held and not reached still ask for a guard band of the expanded uncertainty, with the whole 95 % interval on one side.',
};

/** More evidence of one claim than this is counted, not listed. */
const mostListed = 20;

/** Claims against measurements for people: how many are held, the claims side by side, then the evidence of each. */
export function claimsDocument({ machine, decision, claims, origin }: ClaimReport): Document {
  const rows = claims.map(({ claim, status, conformance }) => [
    claim.label,
    claimText(claim),
    claimStatusText[status],
    conformance === null ? '' : conformanceText(conformance),
  ]);
  const rule = paragraph(`${chosenRuleText(decision)}: ${verdictRules[decision.rule]}`);
  return {
    title: `What ${machine} claims, and what was measured`,
    answer: answerText(machine, claims),
    blocks: [
      ...originBlocks(origin),
      ...(claims.length === 0 ? [] : [rule, table(claimColumns, rows)]),
      ...claims.map(claimSection),
      ...(claims.some(({ conformance }) => conformance !== null) ? [paragraph(conformanceNote)] : []),
      cautions(tableCautions),
    ],
  };
}

/** `10 claims of tollwick/steeple: 1 not reached, 9 untested.` */
function answerText(machine: string, claims: readonly JudgedClaim[]): string {
  if (claims.length === 0) return `The profile of ${machine} holds no claims.`;
  const statuses = [...new Set(claims.map(({ status }) => claimStatusText[status]))];
  const counts = statuses.map(
    (text) => `${claims.filter(({ status }) => claimStatusText[status] === text).length} ${text}`,
  );
  return `${counted(claims.length, 'claim')} of ${machine}: ${enumerated(counts)}.`;
}

/** `60 mm3/s with hs-0.6, PLA, at 230 Cel`. */
function claimText({ statement: { value, at = {} }, dimension }: Claim): string {
  const setup = [at.nozzle, at.filament ?? at.polymer].filter((part) => part !== undefined);
  return [
    shown(value, dimension),
    ...(setup.length === 0 ? [] : [`with ${setup.join(', ')}`]),
    ...(at.nozzleTemperature === undefined ? [] : [`at ${shown(at.nozzleTemperature, 'temperature')}`]),
  ].join(' ');
}

function claimSection({ claim, status, text, conformance, evidence }: JudgedClaim): Section {
  const listed = evidence.slice(0, mostListed).map((each) => evidenceText(each, claim));
  const more = evidence.length - mostListed;
  const items = more > 0 ? [...listed, `and ${more} more`] : listed;
  return section(`${capitalised(claim.label)}, ${claimText(claim)} claimed: ${claimStatusText[status]}`, [
    paragraph(capitalised(`${text}.${conformance === null ? '' : ` ${probabilityText(conformance)}`}`)),
    ...(items.length === 0 ? [] : [list(items)]),
  ]);
}

function probabilityText(conformance: Conformance): string {
  return `The claim holds with a probability of ${conformanceText(conformance)}.`;
}

/**
 * What was found, and where: `44.9 mm3/s measured, …: trial …, hs-0.6, ashgrove/stagecraft-pla, 230 Cel, 2026-03-12`;
 * then what is wrong with that evidence.
 */
function evidenceText(evidence: ClaimEvidence, { dimension, property }: Claim): string {
  const { trial, nozzle, filament, nozzleTemperature, date, faults } = evidence;
  const conditions = [
    trial === null ? 'stated beside the claim' : `trial ${trial}`,
    nozzle,
    filament,
    nozzleTemperature === null || property === 'nozzleTemperature'
      ? null
      : shown(nozzleTemperature, 'temperature'),
    date,
  ].filter((part) => part !== null);
  const found = `${foundText(evidence, dimension)}: ${conditions.join(', ')}`;
  return [found, ...faults.map((fault) => `${standingText(fault)}: ${fault.message}`)].join('; ');
}
