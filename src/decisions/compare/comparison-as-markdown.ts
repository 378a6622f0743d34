import { inputLine } from '../../tables/derive/table-inputs.ts';
import { escapeMarkdown, markdownList, markdownTable } from '../../text/markdown.ts';
import { printable } from '../../text/printable.ts';
import type { GridColumn } from '../../text/text-grid.ts';
import type { Comparison } from './comparison.ts';
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
    markdownList(comparisonNotes(comparison)),
    '## Derived from',
    markdownList(inputs.map(inputLine)),
  ];
  return `${parts.join('\n\n')}\n`;
}

function grid({ heading, rows }: ComparisonBlock, numbers: readonly string[]): string {
  const columns = [heading, ...numbers].map((text): GridColumn => ({ heading: text, align: 'left' }));
  return markdownTable(columns, rows);
}
