import { tableCautions } from '../../knowledge/cautions.ts';
import { dimensionInfo } from '../../units/dimension.ts';
import type { ClaimEvidence, JudgedClaim } from './claim-verdict.ts';
import type { ClaimReport } from './judge-claims.ts';

/** Version of the form of the JSON claims, see `schema/output/claims.schema.json`. */
const claimsFormat = 'meltbounds-claims/1';

/** Claims against measurements for programs: every quantity an object of value and canonical unit. */
export function writeClaimsJson({ machine, claims }: ClaimReport): string {
  const document = {
    format: claimsFormat,
    machine,
    claims: claims.map(claimFacts),
    cautions: tableCautions,
  };
  return `${JSON.stringify(document, null, 2)}\n`;
}

function claimFacts({ claim, status, text, shortfall, evidence }: JudgedClaim): Record<string, unknown> {
  const amount = (value: number) => ({
    value: Number(value.toPrecision(6)),
    unit: dimensionInfo[claim.dimension].canonicalUnit,
  });
  const range = (ends: { low: number; high: number } | null) =>
    ends && { low: amount(ends.low), high: amount(ends.high) };
  const found = ({ value, interval, nozzleTemperature, ...conditions }: ClaimEvidence) => ({
    measured: amount(value),
    interval: range(interval),
    ...conditions,
    nozzleTemperature: nozzleTemperature === null ? null : { value: nozzleTemperature, unit: 'Cel' },
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
      share: Number(shortfall.share.toPrecision(6)),
    },
    evidence: evidence.map(found),
  };
}
