import { createColors } from 'picocolors';
import type { ReducedResult, Reduction } from '../bench/reduction.ts';
import type { Trial } from '../registry/generated/documents.ts';
import { formatQuantity } from '../units/format-quantity.ts';

export interface ReductionHeading {
  /** Id of the trial, or path of the sheet. */
  readonly title: string;
  /** The trial, or null for a bare sheet. */
  readonly subject: Trial | null;
}

const caution =
  'Caution: a starting point for supervised trials, never a licence to exceed a limit of the maker. Hot ends burn and fumes harm: follow the manual, local codes and qualified people.';

/** What a reduction found, for people. */
export function textReduction(reduction: Reduction, heading: ReductionHeading, colour: boolean): string {
  const colours = createColors(colour);
  const lines = [
    colours.bold(`${heading.title}  ${reduction.method}`),
    ...subjectLines(heading.subject),
    ...reduction.results.map((result) => `  ${label('limit')}${resultText(result)}`),
    ...reduction.warnings.map((warning) => `  ${colours.yellow(label('warning'))}${warning}`),
    colours.dim(caution),
  ];
  return `${lines.join('\n')}\n`;
}

function label(text: string): string {
  return text.padEnd(10);
}

function subjectLines(trial: Trial | null): string[] {
  if (trial === null) return [];
  const temperature = formatQuantity(trial.conditions.nozzleTemperature, 'temperature');
  return [
    `  ${label('pairing')}${trial.filament} on ${trial.machine}, nozzle ${trial.nozzle}, ${temperature}`,
    `  ${label('readings')}${trial.origin === 'simulated' ? 'simulated' : 'from the bench'}, ${trial.date}`,
  ];
}

function resultText({ quantity, dimension, value, interval, censored }: ReducedResult): string {
  const text = (number: number) => formatQuantity(number, dimension, { significantDigits: 3 });
  if (censored === 'above')
    return `${quantity} at least ${text(value)}: the ladder ended before the accepted deficit`;
  if (censored === 'below')
    return `${quantity} below ${text(value)}: the first step exceeds the accepted deficit`;
  const { low, high, coverage } = interval;
  if (low === null || high === null) return `${quantity} ${text(value)}`;
  return `${quantity} ${text(value)}, ${coverage * 100} % interval ${text(low)} to ${text(high)}`;
}
