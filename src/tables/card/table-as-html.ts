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
import { formatHtmlBlock } from '../../text/format-html.ts';
import { element } from '../../text/html-element.ts';
import { type Piece, styled } from '../../text/inline.ts';
import { documentInPrint } from '../../units/in-print.ts';
import type { SpeedTable } from '../derive/speed-table.ts';
import { capText, groundFacts, largestFlowText, quirkBlocks, temperaturesText } from '../write/head-text.ts';
import { tableTitle } from '../write/table-as-json.ts';
import { cardMarkup } from './card-as-html.ts';
import { cardView } from './card-of-table.ts';
import { conditionsBlock } from './conditions-block.ts';
import { pageAround } from './html-page.ts';
import { meltLimitPlot } from './plot-melt-limit.ts';
import { reachableSpeedPlot } from './plot-reachable-speed.ts';
import { speedByHeightPlot } from './plot-speed-by-height.ts';
import { flagTerms, speedsBlock } from './speeds-block.ts';

/**
 * The table as one HTML page that needs nothing else: style and pictures stand in it, it runs no script and asks no
 * network. In print the first page is the card, A4, and the long form follows; the same table gives the same bytes.
 */
export function formatTableAsHtml(speeds: SpeedTable): string {
  const { blocks } = documentInPrint(tableLongDocument(speeds));
  const main = element('main', {}, [
    cardMarkup(cardView(speeds)),
    element(
      'div',
      { class: 'behind' },
      blocks.map((block) => formatHtmlBlock(block, 2)),
    ),
  ]);
  return pageAround(tableTitle(speeds), [main]);
}

/** Links to what stands in files of its own beside a plot, to be shown below it. */
export type FilesOfPlot = (name: string) => readonly Piece[];

/** What stands behind the card: everything in full, and where every number comes from. */
export function tableLongDocument(speeds: SpeedTable, filesOf: FilesOfPlot = () => []): Document {
  const blocks = [
    section('Before you print', [list(tableCautions)], 'cautions', 'caution'),
    ...originBlocks(speeds.origin),
    paragraph(`${temperaturesText(speeds)} ${largestFlowText(speeds)}`),
    facts(...groundFacts(speeds)),
    ...quirkBlocks(speeds.quirks),
    ...warningSection(speeds),
    section('Temperatures, cooling, drying, spool', [conditionsBlock(speeds)], 'conditions'),
    ...capSection(speeds),
    section('Speeds in full', [speedsBlock(speeds), terms(usedTerms(speeds))], 'speeds', 'newpage'),
    section(
      'Pictures',
      tablePlots(speeds).map((shown) => picture(shown, filesOf)),
      'pictures',
    ),
    section('Derived from', [inputsTable(speeds)], 'inputs'),
  ];
  return { title: tableTitle(speeds), blocks };
}

function warningSection({ warnings }: SpeedTable): Section[] {
  return warnings.length === 0
    ? []
    : [section('What to know about these numbers', [list(warnings)], 'warnings')];
}

function capSection({ caps }: SpeedTable): Section[] {
  return caps.length === 0 ? [] : [section('House caps', [list(caps.map(capText))], 'caps')];
}

const boundTerms: readonly Fact[] = [
  ['melt', 'the hot end melts no more, less the margin of the house rules'],
  ['traction', 'the drive pushes no more through the nozzle, less the margin of the house rules'],
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

/** A plot of a table, with how to read it and a name that no other plot of the table has. */
interface TablePlot {
  readonly name: string;
  readonly plot: Plot;
  readonly caption: string;
}

/** The plots of a table, as far as it has something to draw. */
export function tablePlots(speeds: SpeedTable): readonly TablePlot[] {
  const plots = plotsOf.get(speeds) ?? newPlots(speeds);
  plotsOf.set(speeds, plots);
  return plots;
}

/** Of a table that is shown and written too; see `drawPlot`. */
const plotsOf = new WeakMap<SpeedTable, readonly TablePlot[]>();

function newPlots(speeds: SpeedTable): TablePlot[] {
  return [
    named(
      'speed-by-height',
      speedByHeightPlot(speeds),
      'The narrowest line. Lines are what the bounds allow at any layer height, points the rows of the table, rounded down; the shape of a point names what limits the speed there. Travel moves do not depend on the layer and are left out.',
    ),
    named(
      'melt-limit',
      meltLimitPlot(speeds),
      'What the hot end was found, or is said, to melt. The tables hold the margin of the house rules back from it. Nothing is drawn beyond the temperatures that are known.',
    ),
    named(
      'reachable-speed',
      reachableSpeedPlot(speeds),
      'The peak of a move from stop to stop. Each mark is a feature, named beside it: its typical segment by the house rules, at its own acceleration.',
    ),
  ].flat();
}

function named(name: string, plot: Plot | null, caption: string): TablePlot[] {
  return plot === null ? [] : [{ name, plot, caption }];
}

function picture({ name, plot, caption }: TablePlot, filesOf: FilesOfPlot): Picture {
  const { description } = plot;
  const files = filesOf(name).flatMap((file) => [' ', file]);
  return {
    kind: 'picture',
    svg: drawPlot(plot),
    characters: null,
    description,
    caption: [caption, ...files],
  };
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
