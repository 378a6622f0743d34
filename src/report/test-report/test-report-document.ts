import { methodOf } from '../../bench/methods.ts';
import { claimsDocument } from '../../decisions/claims/claims-document.ts';
import { tableCautions } from '../../knowledge/cautions.ts';
import { originBlocks } from '../../knowledge/origin.ts';
import { formatQuirk } from '../../knowledge/quirk-words.ts';
import { notesOf } from '../../knowledge/quirks.ts';
import { drawPlot } from '../../plots/draw-plot.ts';
import {
  type Block,
  cautions,
  type Document,
  facts,
  leftColumns,
  list,
  paragraph,
  rowNames,
  type Section,
  section,
  table,
  warnings,
} from '../../text/document.ts';
import type { Text } from '../../text/inline.ts';
import { capitalised, enumerated, wordsOf } from '../../text/words.ts';
import type { Dimension } from '../../units/dimension.ts';
import { formatQuantity } from '../../units/format-quantity.ts';
import { readingColumns, readingsTable } from '../reduction/readings.ts';
import { resultTexts } from '../reduction/reduction-document.ts';
import { reductionPlot } from '../reduction/reduction-plot.ts';
import { askedDetails, type ReportDetails } from './report-details.ts';
import { expandedUncertainty, methodPage, type TestReport } from './test-report.ts';
import { uncertaintyParts } from './uncertainty-parts.ts';
import { writtenFacts } from './written-facts.ts';

/**
 * A test report in the order of ISO/IEC 17025:2017, 7.8.2.1 (points o and p from memory), then conditions and uncertainty as
 * 7.8.3 asks for them, and 7.8.6. What is missing is named, first and at its point.
 */
export function testReportDocument(report: TestReport): Document {
  const { trial, origin, identity } = report;
  return {
    title: `Test report: ${wordsOf(trial.data.method)} of ${trial.data.filament}`,
    answer: `Report ${identity}, issued on ${report.issued}.`,
    blocks: [
      ...originBlocks(origin),
      paragraph(
        'The points follow the order of ISO/IEC 17025:2017, 7.8.2. Conformity with that standard is not claimed: a workshop bench is no accredited laboratory.',
      ),
      ...missingBlocks(report),
      ...generalSections(report),
      ...resultSections(report),
      ...closingSections(report),
      cautions([...tableCautions, ...(methodOf(trial.data.method).cautions ?? [])]),
      paragraph(`End of report ${identity}.`),
    ],
  };
}

const detailNames = Object.keys(askedDetails) as (keyof ReportDetails)[];

function missingBlocks(report: TestReport): Block[] {
  const missing = [
    ...detailNames.filter((key) => report.details[key] === undefined).map((key) => askedDetails[key].name),
    ...(report.trial.data.operator === undefined ? ['who ran it (`operator` of the trial)'] : []),
    ...(report.trial.data.batch === undefined ? ['batch of the filament (`batch` of the trial)'] : []),
  ];
  return missing.length === 0 ? [] : [warnings([`This report lacks: ${enumerated(missing)}.`])];
}

/** What a person has stated, or that nobody has, and how to. */
function detail({ details }: TestReport, key: keyof ReportDetails): Text {
  const { option } = askedDetails[key];
  return details[key] ?? `Not stated (\`${option}\`).`;
}

/** A point of the clause with its letter. */
function point(letter: string, name: string, ...blocks: readonly (Block | Text)[]): Section {
  const asBlock = (each: Block | Text): Block =>
    typeof each === 'object' && 'kind' in each ? each : paragraph(each);
  return section(`${letter}) ${name}`, blocks.map(asBlock), `point-${letter}`);
}

/** Points b to l. */
function generalSections(report: TestReport): Section[] {
  const { trial, identity } = report;
  const { method, filament, batch, machine, nozzle, job, firmware, operator, date } = trial.data;
  const stated = (value: string | undefined) => value ?? 'not stated';
  return [
    point('b', 'Laboratory', detail(report, 'laboratory')),
    point('c', 'Place of the work', detail(report, 'place')),
    point(
      'd',
      'Identification',
      `Report ${identity}; on paper at the foot of every page. The last line says where it ends.`,
    ),
    point('e', 'Customer', detail(report, 'customer')),
    point(
      'f',
      'Method',
      `${capitalised(wordsOf(method))}, as ${methodPage(report)} of the program describes it.`,
    ),
    point(
      'g',
      'Item',
      facts(
        ['Filament', filament],
        ['Batch', stated(batch)],
        ...(machine === undefined ? [] : [['Machine', machine] as const]),
        ...(nozzle === undefined ? [] : [['Nozzle', nozzle] as const]),
        ...(job === undefined ? [] : [['Job', job] as const]),
        ...(firmware === undefined ? [] : [['Firmware', firmware] as const]),
      ),
      ['Condition of the item: ', detail(report, 'itemCondition')].flat() as Text,
    ),
    point('h', 'Date of receipt', detail(report, 'received')),
    point('i', 'Date of the work', `${date}; run by ${stated(operator)}.`),
    point('j', 'Date of issue', report.issued),
    point('k', 'Sampling', detail(report, 'sampling')),
    point('l', 'Scope', 'The results relate only to the items tested, under the conditions stated.'),
  ];
}

/** Keys of a trial under which conditions, instruments and limits of acceptance stand. */
const conditionKeys = [
  ...['conditions', 'scale', 'gauge', 'soundMeter', 'clock', 'thermometer', 'hygrometer'],
  ...['feedLengthUncertainty', 'acceptedDeficit', 'acceptedStrength', 'acceptedRipple', 'acceptedDefect'],
  ...['acceptedGrade', 'residualMoisture', 'settledWithin', 'backgroundLevel', 'roomCorrection'],
];

/** Point m, with what 7.8.3.1 and 7.8.6 ask for beside it. */
function resultSections(report: TestReport): Section[] {
  const { trial, reduction, inputs } = report;
  const conditions = writtenFacts(trial, conditionKeys);
  const readings = readingColumns(trial);
  const plot = reductionPlot(reduction, trial.id, trial.data.events ?? []);
  const parts = uncertaintyParts(inputs, reduction.results[0]);
  return [
    point('m', 'Results', resultTable(report), paragraph(uncertaintyNote)),
    section('Conditions and instruments', [
      conditions.length === 0 ? paragraph('Not stated.') : facts(...conditions),
    ]),
    section('What contributes to the uncertainty of the first result', [
      table(
        [...rowNames('contribution'), ...leftColumns('stated', 'if it were half of that')],
        parts.map(({ name, stated, effect }) => [name, stated, effect]),
      ),
    ]),
    ...(plot === null
      ? []
      : [
          section('Curve', [
            {
              kind: 'picture' as const,
              svg: drawPlot(plot),
              characters: null,
              description: plot.description,
              caption: 'Readings with what was reduced from them.',
            },
          ]),
        ]),
    ...(readings === null ? [] : [section('Readings', [readingsTable(readings)])]),
    ...conformitySection(report),
  ];
}

const uncertaintyNote =
  'U is the expanded uncertainty: half of the width of the 95 % coverage interval (JCGM 101:2008), which need not be symmetric about the value.';

function resultTable({ trial, reduction }: TestReport): Block {
  const method = methodOf(trial.data.method);
  return table(
    [...rowNames('result'), ...leftColumns('value', '95 % interval', 'U', 'remark')],
    reduction.results.map((result) => {
      const { name, value, interval, remark } = resultTexts(
        result,
        method.results[result.quantity],
        method.openWords,
      );
      const half = expandedUncertainty(result);
      const unit = method.results[result.quantity]?.unit;
      return [
        name,
        value,
        interval,
        half === null ? '' : uncertaintyText(half, result.dimension, unit),
        remark,
      ];
    }),
  );
}

/** An uncertainty has two digits, and that of a temperature is a difference. */
function uncertaintyText(half: number, dimension: Dimension, unit: string | undefined): string {
  const isTemperature = dimension === 'temperature';
  return formatQuantity(half, isTemperature ? 'temperatureDifference' : dimension, {
    significantDigits: 2,
    ...(unit !== undefined && !isTemperature && { unit }),
  });
}

/** 7.8.6: where the trial decides what a sheet claims, to which results the statement applies, and by which rule. */
function conformitySection({ claims, trial }: TestReport): Section[] {
  if (claims === null || claims.claims.length === 0) return [];
  const { blocks } = claimsDocument(claims);
  const about = `The statements below apply to the claims that the data sheet of ${claims.machine} makes and that this run tests, and to the results of trial ${trial.id}.`;
  return [
    section('Statement of conformity (7.8.6)', [
      paragraph(about),
      ...blocks.filter(({ kind }) => kind !== 'cautions'),
    ]),
  ];
}

/** Points n to p. */
function closingSections(report: TestReport): Section[] {
  const { trial, reduction } = report;
  const happened = [
    ...(trial.data.events ?? []).map(
      ({ event, commandedFlow, note }) =>
        `${capitalised(event)} at ${formatQuantity(commandedFlow, 'volumeFlow')}${note === undefined ? '' : `: ${note}`}.`,
    ),
    ...notesOf(trial).map(formatQuirk),
    ...(trial.data.notice === undefined ? [] : [trial.data.notice]),
    ...reduction.warnings,
  ];
  return [
    point(
      'n',
      'Additions, deviations, exclusions',
      detail(report, 'deviations'),
      ...(happened.length === 0 ? [] : [list(happened)]),
    ),
    point('o', 'Authorised by', detail(report, 'authorisedBy')),
    point('p', 'Results of external providers', detail(report, 'external')),
  ];
}
