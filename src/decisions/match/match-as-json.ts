import { tableCautions } from '../../knowledge/cautions.ts';
import { quirkFacts } from '../../knowledge/quirk-words.ts';
import { amountOf } from '../../units/rounded.ts';
import type { MatchResult } from './match-registry.ts';
import type { MatchFlow } from './match-verdict.ts';

/** Version of the form of the JSON matches, see `schema/output/match.schema.json`. */
const matchFormat = 'meltbounds-match/1';

/** A match for programs: every pairing with all of its reasons. */
export function formatMatchAsJson({ ranked, matches, origin }: MatchResult): string {
  const document = {
    format: matchFormat,
    ranked,
    origin,
    matches: matches.map((match) => ({
      ...match,
      flow: match.flow && flowFacts(match.flow),
      quirks: match.quirks.map(quirkFacts),
    })),
    cautions: tableCautions,
  };
  return `${JSON.stringify(document, null, 2)}\n`;
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
