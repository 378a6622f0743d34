import { tableCautions } from '../../knowledge/cautions.ts';
import { escapeMarkdown, markdownList, markdownTable } from '../../text/markdown.ts';
import { claimStatusText, type JudgedClaim } from './claim-verdict.ts';
import { claimText, evidenceText } from './claims-as-text.ts';
import type { ClaimReport } from './judge-claims.ts';

const columns = ['claim', 'claimed', 'is', 'because'].map((heading) => ({ heading, align: 'left' as const }));

/** Claims against measurements as Markdown. */
export function writeClaimsMarkdown({ machine, claims }: ClaimReport): string {
  const rows = claims.map(({ claim, status, text }) => [
    claim.label,
    claimText(claim),
    claimStatusText[status],
    text,
  ]);
  const parts = [
    `# What ${escapeMarkdown(machine)} claims, and what was measured`,
    markdownTable(columns, rows),
    ...claims.filter(({ evidence }) => evidence.length > 0).flatMap(detail),
    markdownList(tableCautions),
  ];
  return `${parts.join('\n\n')}\n`;
}

function detail({ claim, evidence }: JudgedClaim): string[] {
  return [
    `## ${escapeMarkdown(`${claim.label}, ${claimText(claim)}`)}`,
    markdownList(evidence.map((each) => evidenceText(each, claim))),
  ];
}
