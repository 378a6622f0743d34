import type { Comparison } from '../decisions/comparison.ts';
import { alignedCells, type GridColumn } from '../tables/text-grid.ts';
import { escapeMarkdown } from '../tables/write-markdown.ts';
import { printable } from '../units/printable.ts';
import { type ComparisonBlock, comparisonBlocks, numberedPairings } from './comparison-grid.ts';
import { comparisonNotes } from './comparison-notes.ts';

/** A comparison as Markdown: the answer first, then one table a block. */
export function markdownComparison(comparison: Comparison): string {
  const { job, policy, answer, inputs } = comparison;
  const pairings = numberedPairings(comparison);
  const parts = [
    `# ${escapeMarkdown(`Job ${job.id} (${printable(job.name)}), policy ${policy}`)}`,
    escapeMarkdown(answer),
    pairings.map(({ number, name }) => `${number}. ${escapeMarkdown(name)}`).join('\n'),
    ...comparisonBlocks(comparison).map((block) =>
      grid(
        block,
        pairings.map(({ number }) => number),
      ),
    ),
    list(comparisonNotes(comparison)),
    '## Derived from',
    list(
      inputs.map(
        ({ kind, id, version, digest }) =>
          `${kind} ${id}${version === null ? '' : ` ${version}`}, sha256 ${digest}`,
      ),
    ),
  ];
  return `${parts.join('\n\n')}\n`;
}

function grid({ heading, rows }: ComparisonBlock, numbers: readonly string[]): string {
  const columns = [heading, ...numbers].map((text): GridColumn => ({ heading: text, align: 'left' }));
  const cells = rows.map((row) => row.map(escapeMarkdown));
  const [head = [], ...body] = alignedCells(columns, cells);
  const rule = head.map((text) => '-'.repeat(Math.max(3, text.length)));
  return [head, rule, ...body].map((row) => `| ${row.join(' | ')} |`).join('\n');
}

function list(items: readonly string[]): string {
  return items.map((item) => `- ${escapeMarkdown(item)}`).join('\n');
}
