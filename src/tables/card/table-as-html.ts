import { tableCautions } from '../../knowledge/cautions.ts';
import { drawPlot } from '../../plots/draw-plot.ts';
import type { Plot } from '../../plots/plot.ts';
import { element, type Markup } from '../../text/html-element.ts';
import { inPrint } from '../../units/in-print.ts';
import type { SpeedTable } from '../derive/speed-table.ts';
import { tableTitle } from '../write/table-as-json.ts';
import { withUnit } from '../write/words.ts';
import { conditionsTable } from './html-conditions.ts';
import { glanceTable } from './html-glance.ts';
import { inputsTable } from './html-inputs.ts';
import { htmlPage } from './html-page.ts';
import { flagItems, speedsTable } from './html-speeds.ts';
import { meltLimitPlot } from './plot-melt-limit.ts';
import { reachableSpeedPlot } from './plot-reachable-speed.ts';
import { speedByHeightPlot } from './plot-speed-by-height.ts';

/**
 * The table as one HTML page that needs nothing else: style and pictures stand in it, it runs no script and asks no
 * network. Made to be printed in black and white and to be read aloud; the same table gives the same bytes.
 */
export function formatTableAsHtml(table: SpeedTable): string {
  return htmlPage(tableTitle(table), [
    element('header', {}, [element('h1', {}, [`${table.filament} on ${table.machine}`]), facts(table)]),
    element('main', {}, sections(table)),
  ]);
}

function sections(table: SpeedTable): Markup[] {
  return [
    section('cautions', 'Before you print', 'caution', [list(tableCautions)]),
    section('glance', 'Speeds at a glance', undefined, [
      glanceTable(table),
      element('p', {}, [
        'Below each speed: what limits it there, and in italics what it rests on where that is less than a measurement or a publication.',
      ]),
    ]),
    section('conditions', 'Temperatures, cooling, drying, spool', undefined, [conditionsTable(table)]),
    ...(table.warnings.length === 0
      ? []
      : [
          section('warnings', 'What to know about these numbers', undefined, [
            list(table.warnings.map(inPrint)),
          ]),
        ]),
    section('speeds', 'Speeds in full', 'newpage', [speedsTable(table), terms(table)]),
    section('pictures', 'Pictures', 'newpage', figures(table)),
    section('inputs', 'Derived from', undefined, [inputsTable(table)]),
  ];
}

function facts({ nozzle, nozzleDiameter, policy, rows, meltLimits }: SpeedTable): Markup {
  const temperatures = meltLimits.map(({ nozzleTemperature }) => nozzleTemperature);
  const [coolest, hottest] = [Math.min(...temperatures), Math.max(...temperatures)];
  const range = coolest === hottest ? '' : `${coolest} to `;
  const each: readonly (readonly [string, string])[] = [
    ['Nozzle', `${nozzle}, ${withUnit(nozzleDiameter, 'mm')}`],
    ['House rules', policy],
    ['Largest flow', withUnit(Math.max(...rows.map(({ flow }) => flow)), 'mm3/s')],
    ['Limits known at', `${range}${withUnit(hottest, 'Cel')}`],
  ];
  return element(
    'dl',
    { class: 'facts' },
    each.map(([name, value]) => element('div', {}, [element('dt', {}, [name]), element('dd', {}, [value])])),
  );
}

function section(
  id: string,
  heading: string,
  className: string | undefined,
  content: readonly Markup[],
): Markup {
  return element('section', { class: className, 'aria-labelledby': id }, [
    element('h2', { id }, [heading]),
    ...content,
  ]);
}

function list(sentences: readonly string[]): Markup {
  return element(
    'ul',
    {},
    sentences.map((sentence) => element('li', {}, [sentence])),
  );
}

const boundTerms: readonly (readonly [string, string])[] = [
  ['melt', 'the hot end melts no more, less the margin of the house rules'],
  ['motion', 'the typical segment is too short to get faster'],
  ['cooling', 'the smallest layer would take less than its shortest time'],
  ['machine', 'the machine goes no faster'],
  ['quality', 'the surface would no longer pass'],
];

/** The words of the tables: the bounds, then the flags that occur. */
function terms(table: SpeedTable): Markup {
  const used = new Set(table.rows.flatMap(({ bounds }) => bounds.map(({ name }): string => name)));
  const bounds = boundTerms
    .filter(([name]) => used.has(name))
    .flatMap(([name, text]) => [element('dt', {}, [name]), element('dd', {}, [text])]);
  return element('dl', { class: 'terms' }, [...bounds, ...flagItems(table)]);
}

function figures(table: SpeedTable): Markup[] {
  return [
    ...figure(
      speedByHeightPlot(table),
      'The narrowest line. The shape of a point names what limits the speed there. Travel moves do not depend on the layer and are left out.',
    ),
    ...figure(
      meltLimitPlot(table),
      'What the hot end was found, or is said, to melt. The tables hold the margin of the house rules back from it. Nothing is drawn beyond the temperatures that are known.',
    ),
    ...figure(
      reachableSpeedPlot(table),
      'The peak of a move from stop to stop. Each mark is a feature: its typical segment by the house rules, at its own acceleration.',
    ),
  ];
}

/** The picture carries its numbers in words for those who cannot see it; the caption says how to read it. */
function figure(plot: Plot | null, caption: string): Markup[] {
  if (plot === null) return [];
  const picture = { markup: drawPlot(plot).trimEnd() };
  return [element('figure', {}, [picture, element('figcaption', {}, [caption])])];
}
