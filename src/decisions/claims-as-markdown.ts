import { tableCautions } from '../tables/cautions.ts';
import { escapeMarkdown, markdownList } from '../tables/markdown.ts';
import { claimStatusText, type JudgedClaim } from './claim-verdict.ts';
import { claimText, evidenceText } from './claims-as-text.ts';
import type { ClaimReport } from './judge-claims.ts';

/** Claims against measurements as Markdown. */
export function writeClaimsMarkdown({ machine, claims }: ClaimReport): string {
  const table = [
    '| claim | claimed | is | because |',
    '| --- | --- | --- | --- |',
    ...claims.map(
      ({ claim, status, text }) =>
        `| ${[claim.label, claimText(claim), claimStatusText[status], text].map(escapeMarkdown).join(' | ')} |`,
    ),
  ];
  const parts = [
    `# What ${escapeMarkdown(machine)} claims, and what was measured`,
    table.join('\n'),
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
