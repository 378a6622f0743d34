import { tableCautions } from '../../knowledge/cautions.ts';
import { originBlocks } from '../../knowledge/origin.ts';
import {
  type Block,
  type Cell,
  type Column,
  cautions,
  type Document,
  type Fact,
  facts,
  list,
  paragraph,
  section,
  table,
  warnings,
} from '../../text/document.ts';
import { headingWords, wordsOf } from '../../text/words.ts';
import { settingText } from '../card/conditions-block.ts';
import type { RowFlag } from '../derive/row-flag.ts';
import type { SpeedRow, SpeedTable } from '../derive/speed-table.ts';
import { inputText } from '../derive/table-inputs.ts';
import {
  capText,
  groundFacts,
  largestFlowText,
  quirkBlocks,
  temperaturesText,
  untestedText,
} from './head-text.ts';
import { tableTitle } from './table-as-json.ts';
import { basisText, withUnit } from './words.ts';

/** How many layer heights stand side by side on a terminal. */
const heightsAbreast = 3;

/** A table for a terminal of 80 columns: what to type in, then what it rests on. Travel moves stand once. */
export function tableTextDocument(speeds: SpeedTable): Document {
  return {
    title: tableTitle(speeds),
    answer: `${temperaturesText(speeds)} ${largestFlowText(speeds)}`,
    blocks: [
      ...originBlocks(speeds.origin),
      facts(...groundFacts(speeds)),
      ...speedBlocks(speeds),
      section('By feature', [featureTable(speeds), facts(...travelFact(speeds))]),
      section('To set besides', [facts(...settingFacts(speeds))]),
      ...(speeds.caps.length === 0 ? [] : [section('House caps', [list(speeds.caps.map(capText))])]),
      ...quirkBlocks(speeds.quirks),
      ...(speeds.warnings.length === 0 ? [] : [warnings(speeds.warnings)]),
      ...nextBlocks(speeds),
      cautions(tableCautions),
      section('Derived from', [list(speeds.inputs.map(inputText))]),
    ],
  };
}

function nextBlocks(speeds: SpeedTable): Block[] {
  const next = untestedText(speeds);
  return next === null ? [] : [paragraph(next)];
}

/** Speeds with what limits them, a block for each line width and few layer heights. */
function speedBlocks({ rows }: SpeedTable): Block[] {
  const printed = rows.filter(({ feature }) => feature !== 'travel');
  return distinct(printed.map(({ lineWidth }) => lineWidth)).flatMap((width) => {
    const ofWidth = printed.filter(({ lineWidth }) => lineWidth === width);
    const heights = distinct(ofWidth.map(({ layerHeight }) => layerHeight));
    return chunks(heights, heightsAbreast).map((few) =>
      section(`Speeds in mm/s, line ${withUnit(width, 'mm')} wide, by layer height`, [
        speedTable(ofWidth, few),
      ]),
    );
  });
}

function speedTable(rows: readonly SpeedRow[], heights: readonly number[]) {
  const columns = heights.flatMap((height): Column[] => [
    { heading: withUnit(height, 'mm'), align: 'right' },
    { heading: '', align: 'left' },
  ]);
  const lines = distinct(rows.map(({ feature }) => feature)).map((feature) => [
    headingWords(feature),
    ...heights.flatMap((height): Cell[] => {
      const row = rows.find((each) => each.feature === feature && each.layerHeight === height);
      return row === undefined ? ['', ''] : [row.speed, boundText(row)];
    }),
  ]);
  return table([{ heading: 'Feature', align: 'left' }, ...columns], lines);
}

/**
 * What limits a speed; a star says that something stands against it, a dagger that a quirk concerns it: the rows by feature
 * name both.
 */
function boundText(row: SpeedRow): string {
  return `${row.bound}${objections(row).length === 0 ? '' : '*'}${row.quirks.length === 0 ? '' : '†'}`;
}

/** The flags of a row but for those that its basis, its quirks or the head of the table name. */
function objections({ flags }: SpeedRow): string[] {
  const elsewhere: readonly RowFlag[] = ['simulated', 'invented', 'quirk'];
  return flags.filter((flag) => !elsewhere.includes(flag)).map(wordsOf);
}

/** Numbers of the quirks that concern some rows: `quirk 2†`. */
function quirkNumbers(rows: readonly SpeedRow[]): string[] {
  const numbers = distinct(rows.flatMap(({ quirks }) => quirks)).sort((a, b) => a - b);
  return numbers.map((index) => `quirk ${index + 1}†`);
}

function featureTable({ rows }: SpeedTable) {
  const features = distinct(rows.map(({ feature }) => feature)).filter((feature) => feature !== 'travel');
  return table(
    [
      { heading: 'Feature', align: 'left' },
      { heading: 'acceleration', unit: 'mm/s2', align: 'right' },
      { heading: 'fan', unit: '%', align: 'right' },
      { heading: 'speeds rest on', align: 'left', wraps: true },
    ],
    features.map((feature) => {
      const own = rows.filter((row) => row.feature === feature);
      const [first] = own;
      const fan = first?.fan ?? null;
      return [
        headingWords(feature),
        first?.acceleration ?? '',
        fan === null ? 'not stated' : Math.round(1000 * fan) / 10,
        [...distinct(own.map(groundText)), ...quirkNumbers(own)].join('; '),
      ];
    }),
  );
}

function groundText(row: SpeedRow): string {
  const { basis, flags } = row;
  const words = objections(row);
  const ground = basis === null ? 'house cap' : basisText(basis, flags);
  return words.length === 0 ? ground : `${ground}* (${words.join(', ')})`;
}

function travelFact({ rows }: SpeedTable): Fact[] {
  const travel = rows.find(({ feature }) => feature === 'travel');
  if (travel === undefined) return [];
  const { speed, acceleration } = travel;
  return [
    [
      'Travel',
      `${withUnit(speed, 'mm/s')} at ${withUnit(acceleration, 'mm/s2')}, limited by ${boundText(travel)}`,
    ],
  ];
}

function settingFacts({ conditions }: SpeedTable): Fact[] {
  return conditions.map((row) => [
    headingWords(row.name),
    [settingText(row), row.note].filter((part) => part !== '').join('. '),
  ]);
}

function distinct<Value>(values: readonly Value[]): Value[] {
  return [...new Set(values)];
}

function chunks<Value>(values: readonly Value[], size: number): Value[][] {
  return Array.from({ length: Math.ceil(values.length / size) }, (_, index) =>
    values.slice(size * index, size * (index + 1)),
  );
}
