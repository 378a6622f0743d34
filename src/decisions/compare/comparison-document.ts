import { tableCautions } from '../../knowledge/cautions.ts';
import { originBlocks } from '../../knowledge/origin.ts';
import { quirkSections } from '../../knowledge/quirk-words.ts';
import { inputText } from '../../tables/derive/table-inputs.ts';
import {
  type Block,
  cautions,
  type Document,
  groupedTable,
  leftColumns,
  list,
  numberedList,
  paragraph,
  warnings,
} from '../../text/document.ts';
import { type Comparison, pairingName } from './comparison.ts';
import { comparisonBlocks } from './comparison-grid.ts';
import { percent } from './format-duration.ts';
import { costScope, currenciesOf } from './hourly-costs.ts';

/** A comparison for people: the answer first, then the figures side by side, a column a pairing. */
export function comparisonDocument(comparison: Comparison): Document {
  const { answer, estimates, origin } = comparison;
  const numbers = estimates.map((_, index) => String(index + 1));
  return {
    title: comparisonTitle(comparison),
    answer,
    blocks: [
      ...originBlocks(origin),
      numberedList(estimates.map(pairingName)),
      groupedTable(
        leftColumns('', ...numbers).map((column, index) => ({ ...column, wraps: index > 0 })),
        comparisonBlocks(comparison),
      ),
      ...comparisonRemarks(comparison),
    ],
  };
}

/** What stands below the figures: what they leave out, quirks, what they were derived from, warnings and cautions. */
export function comparisonRemarks(comparison: Comparison): Block[] {
  const { estimates, inputs } = comparison;
  return [
    list(comparisonNotes(comparison)),
    ...quirkSections(estimates.flatMap(({ quirks }) => quirks)),
    paragraph(`Derived from ${inputs.map(inputText).join('; ')}.`),
    warnings(comparisonWarnings(comparison)),
    cautions(tableCautions),
  ];
}

/** What was compared: `Job mask-rack (Mask rack, three pegs), policy workshop`, and what is otherwise than these say. */
export function comparisonTitle({ job, policy, layerHeight, meltShare }: Comparison): string {
  return [
    `Job ${job.id} (${job.name})`,
    `policy ${policy}`,
    ...(layerHeight === null ? [] : [`layers of ${layerHeight} mm`]),
    ...(meltShare === 1 ? [] : [`${percent(meltShare)} of the melt flow`]),
  ].join(', ');
}

/** What the figures leave out. */
function comparisonNotes({ layerHeight, jobs, hourValue, hourlyCosts }: Comparison): string[] {
  const scope = costScope(hourlyCosts);
  return [
    'Times run from the first path to the last, without heating up, homing and levelling.',
    'Over the melt interval: the time with the melt flow limits at either end of their 95 % intervals; what else it rests on has none.',
    ...(layerHeight === null
      ? []
      : [
          'Layers of another height: each has the paths that a layer of the job has, and their number keeps the part as high; the first layer stays as it is, top surface and bridges keep their length (common practice, no source).',
        ]),
    ...(jobs === null
      ? []
      : [
          `A saved hour costs the difference of the machine prices over the hours saved in all jobs, ${scope}.`,
        ]),
    ...(hourValue === null && currenciesOf(hourlyCosts).length === 0
      ? []
      : [
          `A machine pays once the hours that it saves are worth the difference of the machine prices, ${scope}.`,
        ]),
  ];
}

function comparisonWarnings({ estimates }: Comparison): string[] {
  const all = estimates.flatMap((estimate) =>
    estimate.warnings.map((warning) => `${pairingName(estimate)}: ${warning}`),
  );
  return [...new Set(all)];
}
