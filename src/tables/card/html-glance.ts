import { element, type Markup } from '../../text/html-element.ts';
import { headingWords, wordsOf } from '../../text/words.ts';
import type { SpeedRow, SpeedTable } from '../derive/speed-table.ts';
import { withUnit } from '../write/words.ts';
import { captionedTable } from './html-table.ts';

/** The speeds as one grid, to hang at the machine: features down, beads across; below each speed what limits it. */
export function glanceTable({ rows }: SpeedTable): Markup {
  const heights = distinct(rows.map(({ layerHeight }) => layerHeight));
  const groups = heights.map((height) => ({
    height,
    widths: distinct(
      rows.filter(({ layerHeight }) => layerHeight === height).map(({ lineWidth }) => lineWidth),
    ),
  }));
  const body = distinct(rows.map(({ feature }) => feature)).map((feature) =>
    element('tr', {}, [
      element('th', { scope: 'row' }, [headingWords(feature)]),
      ...groups.flatMap(({ height, widths }) =>
        widths.map((width) =>
          glanceCell(
            rows.find(
              (row) => row.feature === feature && row.layerHeight === height && row.lineWidth === width,
            ),
          ),
        ),
      ),
    ]),
  );
  return captionedTable('Speeds in mm/s by feature, layer height and line width', 'glance', head(groups), [
    element('tbody', {}, body),
  ]);
}

interface BeadGroup {
  readonly height: number;
  readonly widths: readonly number[];
}

function head(groups: readonly BeadGroup[]): Markup[] {
  return [
    element('tr', {}, [
      element('th', { scope: 'col', rowspan: 2 }, ['Feature']),
      ...groups.map(({ height, widths }) =>
        element('th', { scope: 'colgroup', colspan: widths.length }, [`Layer ${withUnit(height, 'mm')}`]),
      ),
    ]),
    element(
      'tr',
      {},
      groups.flatMap(({ widths }) =>
        widths.map((width) => element('th', { scope: 'col' }, [`line ${withUnit(width, 'mm')}`])),
      ),
    ),
  ];
}

function glanceCell(row: SpeedRow | undefined): Markup {
  if (row === undefined) return element('td', {}, ['none']);
  const { speed, bound } = row;
  return element('td', {}, [
    element('strong', {}, [String(speed)]),
    ' ',
    element('span', { class: 'held' }, [bound]),
    ...weakness(row).flatMap((word) => [' ', element('em', {}, [word])]),
  ]);
}

/** What stands against a speed, in the fewest words: a weak basis, and the flags that say more than that. */
function weakness({ basis, flags }: SpeedRow): string[] {
  const isSound = basis === 'measured' || basis === 'published';
  return [
    ...(isSound ? [] : [basis]),
    ...flags.filter((flag) => flag !== 'weakBasis').map((flag) => wordsOf(flag)),
  ];
}

function distinct<Value>(values: readonly Value[]): Value[] {
  return [...new Set(values)];
}
