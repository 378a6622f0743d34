import { tableCautions } from '../../knowledge/cautions.ts';
import { conformanceFacts } from '../../knowledge/conformance.ts';
import { decisionFacts } from '../../knowledge/decision-rule.ts';
import { quirkFacts } from '../../knowledge/quirk-words.ts';
import { jsonText } from '../../text/json-text.ts';
import { amountOf } from '../../units/rounded.ts';
import type { MatchResult } from './match-registry.ts';
import type { ClaimedFlow, MatchFlow } from './match-verdict.ts';

/** Version of the form of the JSON matches, see `schema/output/match.schema.json`. */
const matchFormat = 'meltbounds-match/1';

/** A match for programs: every pairing with all of its reasons. */
export function formatMatchAsJson({ ranked, decision, matches, origin }: MatchResult): string {
  const document = {
    format: matchFormat,
    ranked,
    origin,
    ...decisionFacts(decision),
    matches: matches.map((match) => ({
      ...match,
      flow: match.flow && flowFacts(match.flow),
      claim: match.claim && claimFacts(match.claim),
      quirks: match.quirks.map(quirkFacts),
    })),
    cautions: tableCautions,
  };
  return jsonText(document);
}

function claimFacts({ claimed, conformance }: ClaimedFlow): Record<string, unknown> {
  return {
    claimed: amountOf(claimed, 'mm3/s'),
    probability: conformance && conformanceFacts(conformance),
  };
}

function flowFacts({
  value,
  range,
  basis,
  isLowerBound,
  trials,
  isSimulated,
  nozzleTemperature,
}: MatchFlow): Record<string, unknown> {
  const flow = (number: number) => amountOf(number, 'mm3/s');
  return {
    ...flow(value),
    basis,
    isLowerBound,
    range: range && { low: flow(range.low), high: flow(range.high) },
    trials,
    isSimulated,
    nozzleTemperature: { value: nozzleTemperature, unit: 'Cel' },
  };
}
