/**
 * How accurate every bench method is over simulated benches, as the Markdown tables of docs/bench/accuracy.md: coverage, width and
 * bias by method and class.
 * Usage: tsx scripts/accuracy.ts [BENCHES] [FIRST]; benches of other numbers are other benches
 */
import { groupedBy } from '../src/registry/grouped-by.ts';
import { wordsOf } from '../src/text/words.ts';
import { fromCanonical } from '../src/units/convert-unit.ts';
import { type Dimension, dimensionInfo } from '../src/units/dimension.ts';
import { formatNumber } from '../src/units/format-quantity.ts';
import { requireUnit } from '../src/units/unit-table.ts';
import { lineCoverage } from './methods/simulate-line.ts';
import { type Coverage, coverageOf } from './methods/simulated-bench.ts';
import { simulations } from './methods/simulations.ts';

/** Quantities without a size to compare an error with: a level, a temperature, a relative error. */
const absoluteUnits: Partial<Record<Dimension, readonly [unit: string, shown: string]>> = {
  soundLevel: [dimensionInfo.soundLevel.canonicalUnit ?? '', 'dB'],
  temperature: ['Cel', 'K'],
  temperatureDifference: ['K', 'K'],
  ratio: ['%', '%'],
  length: ['mm', 'mm'],
};

/** Those of a length and a ratio that are compared with their truth all the same. */
const hasSize = ({ quantity, kind, absolute: { dimension } }: Coverage) =>
  absoluteUnits[dimension] === undefined ||
  quantity.endsWith('Fan') ||
  (dimension === 'length' && !(quantity === 'ovality' && kind.startsWith('round')));

const digits = (value: number) => formatNumber(value, { significantDigits: 2 });
const percent = (share: number) => `${(100 * share).toFixed(1)} %`;

function size(value: 'width' | 'bias', row: Coverage): string {
  const unit = absoluteUnits[row.absolute.dimension];
  if (unit === undefined || hasSize(row)) return percent(row[value]);
  const [code, shown] = unit;
  // A difference of two values is a value less 0.
  const inUnit =
    code === 'Cel'
      ? row.absolute[value]
      : fromCanonical(row.absolute[value], requireUnit(code, row.absolute.dimension));
  return `${digits(inUnit)} ${shown}`;
}

const heads = [
  'class',
  'quantity',
  'benches',
  'covered',
  'median width',
  'bias',
  'warned',
  'missed without a word',
];

function table(rows: readonly (readonly string[])[]): string {
  const lines = [heads, heads.map((_, column) => (column < 2 ? '---' : '---:')), ...rows];
  return lines.map((cells) => `| ${cells.join(' | ')} |`).join('\n');
}

const cellsOf = (row: Coverage): string[] => [
  ...[row.kind, wordsOf(row.quantity), String(row.benches), percent(row.covered)],
  ...[size('width', row), size('bias', row), percent(row.warned), percent(row.untold)],
];

/** Many quantities of one kind in one row, each with the weight of its benches. */
function together(rows: readonly Coverage[], quantity: string): Coverage[] {
  return [...groupedBy(rows, ({ kind }) => kind).values()].flatMap((own) => {
    const [first] = own;
    const benches = own.reduce((sum, row) => sum + row.benches, 0);
    const mean = (of: (row: Coverage) => number) =>
      own.reduce((sum, row) => sum + row.benches * of(row), 0) / benches;
    if (first === undefined) return [];
    const [covered, warned, untold] = [
      mean((row) => row.covered),
      mean((row) => row.warned),
      mean((row) => row.untold),
    ];
    const [width, bias] = [mean((row) => row.width), mean((row) => row.bias)];
    return [
      {
        ...first,
        quantity,
        benches,
        covered,
        warned,
        untold,
        width,
        bias,
        absolute: { ...first.absolute, dimension: 'speed' },
      },
    ];
  });
}

const [count = '1200', start = '5000000'] = process.argv.slice(2);
for (const [method, simulators] of Object.entries(simulations)) {
  const name = method as keyof typeof simulations; // Object.entries widens to string
  const found = simulators.map((simulate) => coverageOf(name, simulate, Number(count), Number(start)));
  const rows = found.flatMap((each) => each.rows);
  const shown = name === 'settingLadder' ? together(rows, 'all settings') : rows;
  const refused = found.reduce((sum, each) => sum + each.refused, 0);
  const ordered = shown.toSorted((one, other) =>
    one.kind < other.kind ? -1 : one.kind > other.kind ? 1 : 0,
  );
  console.log(`### ${method}\n\n${table(ordered.map(cellsOf))}\n`);
  if (refused > 0)
    console.log(`Refused with a reason: ${refused} of ${Number(count) * simulators.length}.\n`);
}

const lines = [3, 4, 6].flatMap((ladders) =>
  [1, 1.5, 2, 3].map((scatter) => {
    const kind = { ladders, scatter, extra: 'every interval is too short' } as const;
    return lineCoverage(kind, 8 * Number(count), `accuracy ${start}`);
  }),
);
const lineCells = lines.map((row) => [
  ...[
    row.kind.replace(/ \(.*/, ' the stated scatter'),
    row.quantity,
    String(row.benches),
    percent(row.covered),
  ],
  ...[percent(row.width), percent(row.bias), percent(row.warned), percent(row.untold)],
]);
console.log(`### Limit against temperature\n\n${table(lineCells)}`);
