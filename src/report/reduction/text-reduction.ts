import { createColors } from 'picocolors';
import type { Method } from '../../bench/method.ts';
import { methodOf } from '../../bench/methods.ts';
import type { ReducedResult, Reduction } from '../../bench/reduction.ts';
import type { OpenWords, ResultWords } from '../../bench/result-words.ts';
import type { Trial } from '../../registry/generated/documents.ts';
import { formatQuantity } from '../../units/format-quantity.ts';

export interface ReductionHeading {
  /** Id of the trial, or path of the sheet. */
  readonly title: string;
  /** The trial, or null for a bare sheet. */
  readonly subject: Trial | null;
}

/** What stands below every reduction. */
export const reductionCaution =
  'Caution: a starting point for supervised trials, never a licence to exceed a limit of the maker. Hot ends burn and fumes harm: follow the manual, local codes and qualified people.';

/** What a reduction found, for people. */
export function textReduction(reduction: Reduction, heading: ReductionHeading, colour: boolean): string {
  const colours = createColors(colour);
  const method = methodOf(reduction.method);
  const lines = [
    colours.bold(`${heading.title}  ${reduction.method}`),
    ...subjectLines(heading.subject),
    ...reduction.results.map((result) => `  ${resultLine(result, method)}`),
    ...reduction.warnings.map((warning) => `  ${colours.yellow(label('warning'))}${warning}`),
    colours.dim(reductionCaution),
    ...(method.cautions ?? []).map((caution) => colours.dim(caution)),
  ];
  return `${lines.join('\n')}\n`;
}

function label(text: string): string {
  return text.padEnd(10);
}

function subjectLines(trial: Trial | null): string[] {
  if (trial === null) return [];
  return [
    `  ${label('pairing')}${pairingText(trial)}`,
    `  ${label('readings')}${trial.origin === 'simulated' ? 'simulated' : 'from the bench'}, ${trial.date}`,
  ];
}

function pairingText({ filament, machine, nozzle, conditions, job }: Trial): string {
  const temperature = conditions.nozzleTemperature ?? conditions.dryingTemperature;
  return [
    machine === undefined ? filament : `${filament} on ${machine}`,
    ...(nozzle === undefined ? [] : [`nozzle ${nozzle}`]),
    ...(temperature === undefined ? [] : [formatQuantity(temperature, 'temperature')]),
    ...(job === undefined ? [] : [`job ${job}`]),
  ].join(', ');
}

function resultLine(result: ReducedResult, { results, openWords }: Method): string {
  const words = results[result.quantity];
  return `${label(words?.isLimit ? 'limit' : 'result')}${resultText(result, words, openWords)}`;
}

function resultText(result: ReducedResult, words: ResultWords | undefined, open: OpenWords): string {
  const { quantity, dimension, value, interval, censored, at } = result;
  const text = (number: number) =>
    formatQuantity(number, dimension, {
      significantDigits: words?.digits ?? 3,
      ...(words?.unit !== undefined && { unit: words.unit }),
    });
  const name =
    at === undefined ? quantity : `${quantity} at ${formatQuantity(at.acceleration, 'acceleration')}`;
  if (censored === 'above') return `${name} at least ${text(value)}: ${open.above}`;
  if (censored === 'below') return `${name} below ${text(value)}: ${open.below}`;
  const { low, high, coverage } = interval;
  if (low === null || high === null) return `${name} ${text(value)}`;
  const further = words?.inOtherWords === undefined ? '' : `; ${words.inOtherWords(value)}`;
  return `${name} ${text(value)}, ${coverage * 100} % interval ${text(low)} to ${text(high)}${further}`;
}
