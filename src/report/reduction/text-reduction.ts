import { createColors } from 'picocolors';
import { adoptableLimits } from '../../bench/adopt/adoptable-limits.ts';
import type { ReducedQuantity, ReducedResult, Reduction } from '../../bench/reduction.ts';
import { powerLevel } from '../../physics/sound.ts';
import type { Trial } from '../../registry/generated/documents.ts';
import { formatNumber, formatQuantity } from '../../units/format-quantity.ts';

export interface ReductionHeading {
  /** Id of the trial, or path of the sheet. */
  readonly title: string;
  /** The trial, or null for a bare sheet. */
  readonly subject: Trial | null;
}

/** What stands below every reduction. */
export const reductionCaution =
  'Caution: a starting point for supervised trials, never a licence to exceed a limit of the maker. Hot ends burn and fumes harm: follow the manual, local codes and qualified people.';

/** What stands below the drying of a spool as well. */
const dryingCaution =
  'A dryer that is too hot fuses spools or ignites: stay below the softening temperature, do not leave it alone, and never use an oven for food.';

/** What a reduction found, for people. */
export function textReduction(reduction: Reduction, heading: ReductionHeading, colour: boolean): string {
  const colours = createColors(colour);
  const lines = [
    colours.bold(`${heading.title}  ${reduction.method}`),
    ...subjectLines(heading.subject),
    ...reduction.results.map(
      (result) => `  ${label(isLimit(result) ? 'limit' : 'result')}${resultText(result)}`,
    ),
    ...reduction.warnings.map((warning) => `  ${colours.yellow(label('warning'))}${warning}`),
    colours.dim(reductionCaution),
    ...(reduction.method === 'dryingCurve' ? [colours.dim(dryingCaution)] : []),
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

function isLimit({ quantity }: ReducedResult): boolean {
  return adoptableLimits.some((limit) => limit.quantity === quantity && limit.property !== 'soundLevel');
}

/** Units in which people read a quantity, where those are not the canonical ones. */
const readUnits: Readonly<Partial<Record<ReducedQuantity, string>>> = {
  flowError: '%',
  dryingTime: 'h',
  printTime: 'min',
};

/** Digits that a reading of the quantity is worth. */
const readDigits: Readonly<Partial<Record<ReducedQuantity, number>>> = {
  meanDiameter: 5,
  dryMass: 6,
  printMass: 5,
  printTime: 4,
};

function resultText(result: ReducedResult): string {
  const { quantity, dimension, value, interval, censored, at } = result;
  const unit = readUnits[quantity];
  const text = (number: number) =>
    formatQuantity(number, dimension, {
      significantDigits: readDigits[quantity] ?? 3,
      ...(unit !== undefined && { unit }),
    });
  const name =
    at === undefined ? quantity : `${quantity} at ${formatQuantity(at.acceleration, 'acceleration')}`;
  if (censored !== null) return censoredText(name, text(value), result);
  const { low, high, coverage } = interval;
  if (low === null || high === null) return `${name} ${text(value)}`;
  return `${name} ${text(value)}, ${coverage * 100} % interval ${text(low)} to ${text(high)}${levelText(result)}`;
}

function censoredText(name: string, value: string, { quantity, censored }: ReducedResult): string {
  const words =
    quantity === 'meltFlow'
      ? {
          above: 'the ladder ended before the accepted deficit',
          below: 'the first step exceeds the accepted deficit',
        }
      : {
          above: 'the readings end before it',
          below: 'the readings begin beyond it',
        };
  return censored === 'above'
    ? `${name} at least ${value}: ${words.above}`
    : `${name} below ${value}: ${words.below}`;
}

/** A sound power is read as a level, which UCUM has no unit for. */
function levelText({ quantity, value }: ReducedResult): string {
  if (quantity !== 'soundPower') return '';
  return `; level ${formatNumber(powerLevel(value), { significantDigits: 3 })} dB(A) re 1 pW`;
}
