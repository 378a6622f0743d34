import { tableCautions } from '../../knowledge/cautions.ts';
import { type Comparison, pairingName } from './comparison.ts';

/** What a reader must know besides the figures: warnings, what the figures leave out, and the usual cautions. */
export function comparisonNotes({ estimates, jobs, hourValue }: Comparison): string[] {
  const warnings = estimates.flatMap((estimate) =>
    estimate.warnings.map((warning) => `${pairingName(estimate)}: ${warning}`),
  );
  return [
    ...new Set(warnings),
    'Times run from the first path to the last: heating up, homing and levelling are not in them.',
    ...(jobs === null
      ? []
      : [
          'A saved hour costs the difference of the machine prices over the hours saved in all jobs; filament, power, labour and wear are not in it.',
        ]),
    ...(hourValue === null
      ? []
      : [
          'A machine pays where the hours that it saves are worth the difference of the machine prices; filament, power, labour and wear are not in it.',
        ]),
    ...tableCautions,
  ];
}
