import { tableCautions } from '../../knowledge/cautions.ts';
import { amountOf } from '../../units/rounded.ts';
import type { MatchResult } from './match-registry.ts';
import type { MatchFlow } from './match-verdict.ts';

/** Version of the form of the JSON matches, see `schema/output/match.schema.json`. */
const matchFormat = 'meltbounds-match/1';

/** A match for programs: every pairing with all of its reasons. */
export function formatMatchAsJson({ ranked, matches }: MatchResult): string {
  const document = {
    format: matchFormat,
    ranked,
    matches: matches.map((match) => ({ ...match, flow: match.flow && flowFacts(match.flow) })),
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
  nozzleTemperature,
}: MatchFlow): Record<string, unknown> {
  const flow = (number: number) => amountOf(number, 'mm3/s');
  return {
    ...flow(value),
    basis,
    isLowerBound,
    range: range && { low: flow(range.low), high: flow(range.high) },
    trials,
    nozzleTemperature: { value: nozzleTemperature, unit: 'Cel' },
  };
}
