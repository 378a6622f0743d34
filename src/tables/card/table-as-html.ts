import { tableCautions } from '../../knowledge/cautions.ts';
import { originBlocks } from '../../knowledge/origin.ts';
import { drawPlot } from '../../plots/draw-plot.ts';
import type { Plot } from '../../plots/plot.ts';
import {
  type Document,
  type Fact,
  facts,
  leftColumns,
  list,
  type Picture,
  paragraph,
  rowNames,
  type Section,
  section,
  type Table,
  table,
  terms,
} from '../../text/document.ts';
import { styled } from '../../text/inline.ts';
import type { SpeedTable } from '../derive/speed-table.ts';
import { capText, largestFlowText, quirkBlocks, temperaturesText } from '../write/head-text.ts';
import { tableTitle } from '../write/table-as-json.ts';
import { withUnit } from '../write/words.ts';
import { conditionsBlock } from './conditions-block.ts';
import { glanceBlock } from './glance-block.ts';
import { htmlPage } from './html-page.ts';
import { meltLimitPlot } from './plot-melt-limit.ts';
import { reachableSpeedPlot } from './plot-reachable-speed.ts';
import { speedByHeightPlot } from './plot-speed-by-height.ts';
import { flagTerms, speedsBlock } from './speeds-block.ts';

/**
 * The table as one HTML page that needs nothing else: style and pictures stand in it, it runs no script and asks no
 * network. Made to be printed in black and white and to be read aloud; the same table gives the same bytes.
 */
export function formatTableAsHtml(speeds: SpeedTable): string {
  return htmlPage(tableTitle(speeds), tableCardDocument(speeds));
}

/** A table to hang at the machine: cautions, the speeds as one grid, what to set besides, then all of it in full. */
export function tableCardDocument(speeds: SpeedTable): Document {
  return {
    title: `${speeds.filament} on ${speeds.machine}`,
    blocks: [
      ...originBlocks(speeds.origin),
      paragraph(`${temperaturesText(speeds)} ${largestFlowText(speeds)}`),
      facts(...summary(speeds)),
      section('Before you print', [list(tableCautions)], 'cautions', 'caution'),
      section('Speeds at a glance', [glanceBlock(speeds), paragraph(glanceKey)], 'glance'),
      section('Temperatures, cooling, drying, spool', [conditionsBlock(speeds)], 'conditions'),
      ...(speeds.caps.length === 0 ? [] : [section('House caps', [list(speeds.caps.map(capText))], 'caps')]),
      ...quirkBlocks(speeds.quirks),
      ...warningSection(speeds),
      section('Speeds in full', [speedsBlock(speeds), terms(usedTerms(speeds))], 'speeds', 'newpage'),
      section('Pictures', pictures(speeds), 'pictures', 'newpage'),
      section('Derived from', [inputsTable(speeds)], 'inputs'),
    ],
  };
}

const glanceKey =
  'Below each speed: what limits it there, and in italics what it rests on where that is less than a measurement or a publication.';

function warningSection({ warnings }: SpeedTable): Section[] {
  return warnings.length === 0
    ? []
    : [section('What to know about these numbers', [list(warnings)], 'warnings')];
}

function summary({ nozzle, nozzleDiameter, policy, rows, meltLimits }: SpeedTable): Fact[] {
  const temperatures = meltLimits.map(({ nozzleTemperature }) => nozzleTemperature);
  const [coolest, hottest] = [Math.min(...temperatures), Math.max(...temperatures)];
  const range = coolest === hottest ? '' : `${coolest} to `;
  return [
    ['Nozzle', `${nozzle}, ${withUnit(nozzleDiameter, 'mm')}`],
    ['House rules', policy],
    ['Largest flow', withUnit(Math.max(...rows.map(({ flow }) => flow)), 'mm3/s')],
    ['Limits known at', `${range}${withUnit(hottest, 'Cel')}`],
  ];
}

const boundTerms: readonly Fact[] = [
  ['melt', 'the hot end melts no more, less the margin of the house rules'],
  ['motion', 'the typical segment is too short to get faster'],
  ['cooling', 'the smallest layer would take less than its shortest time'],
  ['machine', 'the machine goes no faster'],
  ['quality', 'the surface would no longer pass'],
  ['policy', 'the house allows no more outright'],
];

/** The words of the tables: the bounds, then the flags that occur. */
function usedTerms(speeds: SpeedTable): Fact[] {
  const used = new Set(speeds.rows.flatMap(({ bounds }) => bounds.map(({ name }): string => name)));
  return [...boundTerms.filter(([name]) => used.has(name)), ...flagTerms(speeds)];
}

function pictures(speeds: SpeedTable): Picture[] {
  return [
    ...picture(
      speedByHeightPlot(speeds),
      'The narrowest line. Lines are what the bounds allow at any layer height, points the rows of the table, rounded down; the shape of a point names what limits the speed there. Travel moves do not depend on the layer and are left out.',
    ),
    ...picture(
      meltLimitPlot(speeds),
      'What the hot end was found, or is said, to melt. The tables hold the margin of the house rules back from it. Nothing is drawn beyond the temperatures that are known.',
    ),
    ...picture(
      reachableSpeedPlot(speeds),
      'The peak of a move from stop to stop. Each mark is a feature, named beside it: its typical segment by the house rules, at its own acceleration.',
    ),
  ];
}

function picture(plot: Plot | null, caption: string): Picture[] {
  if (plot === null) return [];
  const { description } = plot;
  return [{ kind: 'picture', svg: drawPlot(plot), characters: null, description, caption }];
}

/** The documents that the table was derived from, with version and digest. */
function inputsTable({ inputs }: SpeedTable): Table {
  const columns = [...rowNames('Id'), ...leftColumns('Kind', 'Version', 'SHA-256 of the file')];
  const rows = inputs.map((input) => [
    input.id,
    input.kind,
    input.version ?? 'none',
    [styled('code', input.digest)],
  ]);
  return table(columns, rows, {
    caption: 'Documents, with the digest that tells whether they have changed since',
    name: 'inputs',
  });
}
