import { type Cell, type Column, type Table, table } from '../../text/document.ts';
import { quiet, strong, styled } from '../../text/inline.ts';
import { headingWords, wordsOf } from '../../text/words.ts';
import type { SpeedRow, SpeedTable } from '../derive/speed-table.ts';
import { withUnit } from '../write/words.ts';

/** The speeds as one grid, to hang at the machine: features down, beads across; beside each speed what limits it. */
export function glanceBlock({ rows }: SpeedTable): Table {
  const beads = beadsOf(rows);
  const lines = distinct(rows.map(({ feature }) => feature)).map((feature) => [
    headingWords(feature),
    ...beads.map((bead) => glanceCell(rows.find((row) => row.feature === feature && isOf(bead, row)))),
  ]);
  return table([{ heading: 'Feature', align: 'left', namesRow: true }, ...beads.map(beadColumn)], lines, {
    caption: 'Speeds in mm/s by feature, layer height and line width',
    name: 'glance',
  });
}

type Bead = Pick<SpeedRow, 'layerHeight' | 'lineWidth'>;

/** The beads of the rows, those of one layer height together. */
function beadsOf(rows: readonly SpeedRow[]): Bead[] {
  return distinct(rows.map(({ layerHeight }) => layerHeight)).flatMap((layerHeight) => {
    const widths = rows.filter((row) => row.layerHeight === layerHeight).map(({ lineWidth }) => lineWidth);
    return distinct(widths).map((lineWidth) => ({ layerHeight, lineWidth }));
  });
}

function isOf(bead: Bead, row: SpeedRow): boolean {
  return row.layerHeight === bead.layerHeight && row.lineWidth === bead.lineWidth;
}

function beadColumn({ layerHeight, lineWidth }: Bead): Column {
  return {
    group: `Layer ${withUnit(layerHeight, 'mm')}`,
    heading: `line ${withUnit(lineWidth, 'mm')}`,
    align: 'left',
  };
}

function glanceCell(row: SpeedRow | undefined): Cell {
  if (row === undefined) return 'none';
  const weak = weakness(row).flatMap((word) => [' ', styled('emphasis', word)]);
  return [strong(String(row.speed)), ' ', quiet(row.bound), ...weak];
}

/** What stands against a speed, in the fewest words: a weak basis, and the flags that say more than that. */
function weakness({ basis, flags }: SpeedRow): string[] {
  const isSound = basis === null || basis === 'measured' || basis === 'published';
  return [
    ...(isSound ? [] : [basis]),
    ...flags.filter((flag) => flag !== 'weakBasis').map((flag) => wordsOf(flag)),
  ];
}

function distinct<Value>(values: readonly Value[]): Value[] {
  return [...new Set(values)];
}
