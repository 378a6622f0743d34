import { tableCautions } from '../../knowledge/cautions.ts';
import { conformanceFacts } from '../../knowledge/conformance.ts';
import { decisionFacts } from '../../knowledge/decision-rule.ts';
import { jsonText } from '../../text/json-text.ts';
import { dimensionInfo } from '../../units/dimension.ts';
import { amountOf, rounded } from '../../units/rounded.ts';
import type { ClaimEvidence, JudgedClaim } from './claim-verdict.ts';
import type { ClaimReport } from './judge-claims.ts';

/** Version of the form of the JSON claims, see `schema/output/claims.schema.json`. */
const claimsFormat = 'meltbounds-claims/1';

/** Claims against measurements for programs: every quantity an object of value and canonical unit. */
export function formatClaimsAsJson({ machine, decision, claims, origin }: ClaimReport): string {
  const document = {
    format: claimsFormat,
    machine,
    origin,
    ...decisionFacts(decision),
    claims: claims.map(claimFacts),
    cautions: tableCautions,
  };
  return jsonText(document);
}

function claimFacts(judged: JudgedClaim): Record<string, unknown> {
  const { claim, status, text, shortfall, conformance, evidence } = judged;
  const unit = dimensionInfo[claim.dimension].canonicalUnit ?? '1';
  const amount = (value: number) => amountOf(value, unit);
  const range = (ends: { low: number; high: number } | null) =>
    ends && { low: amount(ends.low), high: amount(ends.high) };
  const found = ({
    value,
    interval,
    nozzleTemperature,
    faults,
    isAdopted: _,
    ...conditions
  }: ClaimEvidence) => ({
    measured: amount(value),
    interval: range(interval),
    ...conditions,
    nozzleTemperature: nozzleTemperature === null ? null : { value: nozzleTemperature, unit: 'Cel' },
    ...(faults.length > 0 && { faults }),
  });
  return {
    property: claim.property,
    hotEnd: claim.hotEnd?.id ?? null,
    claimed: amount(claim.statement.value),
    at: claim.statement.at ?? null,
    source: claim.statement.source ?? null,
    status,
    text,
    shortfall: shortfall && {
      ...amount(shortfall.value),
      range: range(shortfall.range),
      share: rounded(shortfall.share),
    },
    probability: conformance && conformanceFacts(conformance),
    evidence: evidence.map(found),
  };
}
