import { element, type Markup } from '../../text/html-element.ts';
import { headingWords, wordsOf } from '../../text/words.ts';
import { formatNumber } from '../../units/format-quantity.ts';
import type { SpeedRow, SpeedTable } from '../derive/speed-table.ts';
import { flagText } from '../write/words.ts';
import { captionedTable, cell, type HtmlColumn, headingRow, rowHeading } from './html-table.ts';

const columns: readonly HtmlColumn[] = [
  { heading: 'Feature', unit: null, isNumber: false },
  { heading: 'Layer height', unit: 'mm', isNumber: true },
  { heading: 'Line width', unit: 'mm', isNumber: true },
  { heading: 'Speed', unit: 'mm/s', isNumber: true },
  { heading: 'Flow', unit: 'mm3/s', isNumber: true },
  { heading: 'Acceleration', unit: 'mm/s2', isNumber: true },
  { heading: 'Run-up', unit: 'mm', isNumber: true },
  { heading: 'Nozzle', unit: 'Cel', isNumber: true },
  { heading: 'Limited by', unit: null, isNumber: false },
  { heading: 'Rests on', unit: null, isNumber: false },
  { heading: 'Next bound', unit: null, isNumber: false },
];

/** Every row of the table, a group of rows a feature, with what binds, what would bind next, and weak spots in words. */
export function speedsTable({ rows }: SpeedTable): Markup {
  const features = [...new Set(rows.map(({ feature }) => feature))];
  const bodies = features.map((feature) => {
    const group = rows.filter((row) => row.feature === feature);
    return element(
      'tbody',
      {},
      group.map((row, index) =>
        element('tr', {}, [
          ...(index === 0
            ? [element('th', { scope: 'rowgroup', rowspan: group.length }, [headingWords(feature)])]
            : []),
          ...cells(row),
        ]),
      ),
    );
  });
  return captionedTable(
    'Speeds with flow, acceleration, run-up and nozzle temperature, and what limits them',
    'full',
    [headingRow(columns)],
    bodies,
  );
}

function cells(row: SpeedRow): Markup[] {
  const { layerHeight, lineWidth, speed, flow, acceleration, runUp, nozzleTemperature, bound } = row;
  return [
    rowHeading(layerHeight),
    rowHeading(lineWidth),
    element('td', { class: 'number' }, [element('strong', {}, [String(speed)])]),
    ...[flow, acceleration, runUp, nozzleTemperature].map(cell),
    cell(bound),
    cell(basisWords(row)),
    element('td', { class: 'short' }, [nextWords(row)]),
  ];
}

/** The basis of the weakest number, and the flags, which the page explains. */
function basisWords({ basis, flags }: SpeedRow): string {
  return flags.length === 0 ? basis : `${basis}: ${flags.map(wordsOf).join(', ')}`;
}

function nextWords({ runnerUp }: SpeedRow): string {
  if (runnerUp === null) return 'nothing known';
  const slack = formatNumber(100 * runnerUp.slack, { significantDigits: 2 });
  return `${runnerUp.name}, +${slack} %`;
}

/** The flags that the rows carry, each with its meaning; empty where there are none. */
export function flagItems({ rows, conditions }: SpeedTable): Markup[] {
  const used = new Set([...rows, ...conditions].flatMap(({ flags }) => flags));
  return [...used]
    .sort()
    .flatMap((flag) => [element('dt', {}, [wordsOf(flag)]), element('dd', {}, [flagText[flag]])]);
}
