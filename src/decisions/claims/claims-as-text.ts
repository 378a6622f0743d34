import { tableCautions } from '../../knowledge/cautions.ts';
import { alignedCells, type GridColumn } from '../../text/text-grid.ts';
import { shown } from '../../units/wording.ts';
import type { Claim } from './claim.ts';
import { type ClaimEvidence, claimStatusText, type JudgedClaim } from './claim-verdict.ts';
import type { ClaimReport } from './judge-claims.ts';
import { foundText } from './judge-measured.ts';

/** More evidence than this is counted, not listed. */
const mostListed = 5;

/** Claims against measurements for a terminal. */
export function writeClaimsText({ machine, claims }: ClaimReport): string {
  const columns: GridColumn[] = ['claim', 'claimed', 'is'].map((heading) => ({ heading, align: 'left' }));
  const rows = claims.map(({ claim, status }) => [claim.label, claimText(claim), claimStatusText[status]]);
  const lines = [
    `What ${machine} claims, and what was measured`,
    '',
    ...(claims.length === 0
      ? ['Its profile holds no claims.']
      : alignedCells(columns, rows).map((row) => row.join('  ').trimEnd())),
    ...claims.flatMap(detail),
    '',
    ...tableCautions.map((caution) => `Caution: ${caution}`),
  ];
  return `${lines.join('\n')}\n`;
}

/** `60 mm3/s with hs-0.6, PLA, at 230 Cel`. */
export function claimText({ statement: { value, at = {} }, dimension }: Claim): string {
  const setup = [at.nozzle, at.filament ?? at.polymer].filter((part) => part !== undefined);
  const temperature =
    at.nozzleTemperature === undefined ? '' : `at ${shown(at.nozzleTemperature, 'temperature')}`;
  const parts = [
    ...(setup.length === 0 ? [] : [`with ${setup.join(', ')}`]),
    ...(temperature === '' ? [] : [temperature]),
  ];
  return [shown(value, dimension), ...parts].join(' ');
}

function detail(judged: JudgedClaim): string[] {
  const { claim, status, text, evidence } = judged;
  const listed = evidence.slice(0, mostListed).map((each) => `  - ${evidenceText(each, claim)}`);
  const more = evidence.length - mostListed;
  return [
    '',
    `${claim.label}, ${claimText(claim)} claimed: ${claimStatusText[status]}`,
    `  ${text}`,
    ...listed,
    ...(more > 0 ? [`  - and ${more} more`] : []),
  ];
}

/** What was found, and where: `44.9 mm3/s measured (…): trial …, hs-0.6, ashgrove/stagecraft-pla, 230 Cel, 2026-03-12`. */
export function evidenceText(evidence: ClaimEvidence, { dimension, property }: Claim): string {
  const { trial, nozzle, filament, nozzleTemperature, date, simulated } = evidence;
  const conditions = [
    trial === null ? 'stated beside the claim' : `trial ${trial}`,
    nozzle,
    filament,
    nozzleTemperature === null || property === 'nozzleTemperature'
      ? null
      : shown(nozzleTemperature, 'temperature'),
    date,
    simulated ? 'simulated readings' : null,
  ].filter((part) => part !== null);
  return `${foundText(evidence, dimension)}: ${conditions.join(', ')}`;
}
