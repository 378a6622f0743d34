import { createColors } from 'picocolors';
import { printable } from '../../text/printable.ts';
import { alignedCells, type GridColumn } from '../../text/text-grid.ts';
import type { Comparison } from './comparison.ts';
import { comparisonBlocks, numberedPairings } from './comparison-grid.ts';
import { comparisonNotes } from './comparison-notes.ts';

/** A comparison for people: the answer first, then the figures side by side. */
export function textComparison(comparison: Comparison, colour: boolean): string {
  const colours = createColors(colour);
  const pairings = numberedPairings(comparison);
  const blocks = comparisonBlocks(comparison);
  const columns: GridColumn[] = [
    { heading: '', align: 'left' },
    ...pairings.map(({ number }): GridColumn => ({ heading: number, align: 'left' })),
  ];
  // One grid for all blocks, so that a pairing stands in the same column everywhere.
  const [, ...lines] = alignedCells(
    columns,
    blocks.flatMap(({ heading, rows }) => [[heading, ...pairings.map(({ number }) => number)], ...rows]),
  ).map((cells) => `  ${cells.join('  ')}`.trimEnd());
  const { job, policy, answer } = comparison;
  const grids = blocks.map(({ rows }, index) => {
    const start = blocks.slice(0, index).reduce((sum, block) => sum + block.rows.length + 1, 0);
    const [heading = '', ...rest] = lines.slice(start, start + rows.length + 1);
    return [colours.bold(heading), ...rest].join('\n');
  });
  const parts = [
    `${colours.bold(`Job ${job.id}`)} (${printable(job.name)}), policy ${policy}`,
    answer,
    pairings.map(({ number, name }) => `  ${number}  ${name}`).join('\n'),
    ...grids,
    comparisonNotes(comparison)
      .map((note) => colours.dim(note))
      .join('\n'),
  ];
  return `${parts.join('\n\n')}\n`;
}
