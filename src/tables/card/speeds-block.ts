import { type Cell, type Column, type Fact, type Table, table } from '../../text/document.ts';
import { strong } from '../../text/inline.ts';
import { headingWords, wordsOf } from '../../text/words.ts';
import { formatNumber } from '../../units/format-quantity.ts';
import type { RowFlag } from '../derive/row-flag.ts';
import type { SpeedRow, SpeedTable } from '../derive/speed-table.ts';
import { basisText, flagText } from '../write/words.ts';

const columns: readonly Column[] = [
  { heading: 'Feature', align: 'left', namesGroup: true },
  { heading: 'Layer height', unit: 'mm', align: 'right', namesRow: true },
  { heading: 'Line width', unit: 'mm', align: 'right', namesRow: true },
  { heading: 'Speed', unit: 'mm/s', align: 'right' },
  { heading: 'Flow', unit: 'mm3/s', align: 'right' },
  { heading: 'Acceleration', unit: 'mm/s2', align: 'right' },
  { heading: 'Run-up', unit: 'mm', align: 'right' },
  { heading: 'Nozzle', unit: 'Cel', align: 'right' },
  { heading: 'Limited by', align: 'left' },
  { heading: 'Rests on', align: 'left' },
  { heading: 'Next bound', align: 'left' },
];

/** Every row of the table, a group of rows a feature, with what binds, what would bind next, and weak spots in words. */
export function speedsBlock({ rows }: SpeedTable): Table {
  const features = [...new Set(rows.map(({ feature }) => feature))];
  const lines = features.flatMap((feature) => rows.filter((row) => row.feature === feature).map(cells));
  return table(columns, lines, {
    caption: 'Speeds with flow, acceleration, run-up and nozzle temperature, and what limits them',
    name: 'full',
  });
}

function cells(row: SpeedRow): Cell[] {
  const { feature, layerHeight, lineWidth, speed, flow, acceleration, runUp, nozzleTemperature } = row;
  return [
    headingWords(feature),
    layerHeight,
    lineWidth,
    [strong(String(speed))],
    flow,
    acceleration,
    runUp,
    nozzleTemperature,
    row.bound,
    basisWords(row),
    nextWords(row),
  ];
}

/** The basis of the weakest number, and the flags, which the page explains, but for those that its head tells. */
function basisWords({ basis, flags, quirks }: SpeedRow): string {
  const told: readonly RowFlag[] = ['simulated', 'invented', 'quirk'];
  const words = [
    ...flags.filter((flag) => !told.includes(flag)).map(wordsOf),
    ...quirks.map((index) => `quirk ${index + 1}`),
  ];
  const ground = basis === null ? 'house rule' : basisText(basis, flags);
  return words.length === 0 ? ground : `${ground}: ${words.join(', ')}`;
}

function nextWords({ runnerUp }: SpeedRow): string {
  if (runnerUp === null) return 'nothing known';
  const slack = formatNumber(100 * runnerUp.slack, { significantDigits: 2 });
  return `${runnerUp.name}, +${slack} %`;
}

/** The flags that the rows carry, each with its meaning; empty where there are none. */
export function flagTerms({ rows, conditions }: SpeedTable): Fact[] {
  const used = new Set([...rows, ...conditions].flatMap(({ flags }) => flags));
  return [...used].sort().map((flag) => [wordsOf(flag), flagText[flag]]);
}
