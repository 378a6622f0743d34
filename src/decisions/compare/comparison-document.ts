import { tableCautions } from '../../knowledge/cautions.ts';
import { inputText } from '../../tables/derive/table-inputs.ts';
import {
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

/** A comparison for people: the answer first, then the figures side by side, a column a pairing. */
export function comparisonDocument(comparison: Comparison): Document {
  const { job, policy, answer, estimates, inputs } = comparison;
  const numbers = estimates.map((_, index) => String(index + 1));
  return {
    title: `Job ${job.id} (${job.name}), policy ${policy}`,
    answer,
    blocks: [
      numberedList(estimates.map(pairingName)),
      groupedTable(
        leftColumns('', ...numbers).map((column, index) => ({ ...column, wraps: index > 0 })),
        comparisonBlocks(comparison),
      ),
      list(comparisonNotes(comparison)),
      paragraph(`Derived from ${inputs.map(inputText).join('; ')}.`),
      warnings(comparisonWarnings(comparison)),
      cautions(tableCautions),
    ],
  };
}

/** What the figures leave out. */
function comparisonNotes({ jobs, hourValue }: Comparison): string[] {
  return [
    'Times run from the first path to the last, without heating up, homing and levelling.',
    ...(jobs === null
      ? []
      : [
          'A saved hour costs the difference of the machine prices over the hours saved in all jobs, without filament, power, labour and wear.',
        ]),
    ...(hourValue === null
      ? []
      : [
          'A machine pays once the hours that it saves are worth the difference of the machine prices, without filament, power, labour and wear.',
        ]),
  ];
}

function comparisonWarnings({ estimates }: Comparison): string[] {
  const all = estimates.flatMap((estimate) =>
    estimate.warnings.map((warning) => `${pairingName(estimate)}: ${warning}`),
  );
  return [...new Set(all)];
}
