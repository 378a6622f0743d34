import { createColors } from 'picocolors';
import type { LimitLine } from '../../bench/limit-line/limit-line.ts';
import type { LimitAnswer } from '../../bench/limit-line/limit-line-answers.ts';
import type { PairingReduction } from '../../bench/limit-line/pairing-reduction.ts';
import { formatNumber, formatQuantity } from '../../units/format-quantity.ts';
import { limitLineWarnings } from './limit-line-warnings.ts';
import { reductionCaution } from './text-reduction.ts';

/** What the flow ladders of a pairing say of the limit against the nozzle temperature, for people. */
export function textLimitLine(
  pairing: PairingReduction,
  answers: readonly LimitAnswer[],
  colour: boolean,
): string {
  const colours = createColors(colour);
  const { filament, machine, nozzle, otherNozzles, origin, acceptedDeficit, line } = pairing;
  const others = otherNozzles.length === 0 ? '' : ` (ladders also on ${otherNozzles.join(', ')})`;
  const lines = [
    colours.bold(`${filament} on ${machine}, nozzle ${nozzle}  limit against nozzle temperature`),
    `  ${label('readings')}${origins[origin]}${others}`,
    ...(acceptedDeficit === null ? [] : [`  ${label('accepted')}${deficit(acceptedDeficit)} deficit`]),
    ...limitLines(pairing),
    ...(line === null ? [] : lineLines(line)),
    ...answers.map((answer) => `  ${label('at')}${answerText(answer)}`),
    ...limitLineWarnings(pairing).map((warning) => `  ${colours.yellow(label('warning'))}${warning}`),
    colours.dim(reductionCaution),
  ];
  return `${lines.join('\n')}\n`;
}

const origins = { bench: 'from the bench', simulated: 'simulated', mixed: 'partly simulated' } as const;

function limitLines({ limits, temperatures, bounds }: PairingReduction): string[] {
  const combined = temperatures.filter(({ trials }) => trials > 1);
  return [
    ...limits.map((point) => `  ${label('limit')}${intervalText(point)}  ${point.trial}`),
    ...bounds.map(
      ({ temperature, bound, censored, trial }) =>
        `  ${label('bound')}${formatQuantity(temperature, 'temperature')}: ${censored === 'above' ? 'at least' : 'below'} ${flow(bound)}  ${trial}`,
    ),
    ...combined.map((point) => `  ${label('combined')}${intervalText(point)}  ${point.trials} trials`),
  ];
}

function lineLines({ slope, slopeUncertainty, intercept, centre, tested }: LimitLine): string[] {
  const middle = formatQuantity(centre.temperature, 'temperature', { decimals: 1 });
  return [
    `  ${label('line')}${flow(centre.limit)} at ${middle}, ${digits(slope)} mm3/s more per K (standard uncertainty ${formatNumber(slopeUncertainty, { significantDigits: 2 })} mm3/s/K)`,
    `  ${label('')}${digits(intercept)} mm3/s at 0 Cel fixes the line; it is no limit`,
    `  ${label('tested')}${formatQuantity(tested.low, 'temperature')} to ${formatQuantity(tested.high, 'temperature')}`,
  ];
}

function answerText(answer: LimitAnswer): string {
  return `${intervalText(answer)}${answer.extrapolated ? '  EXTRAPOLATED beyond the tested temperatures: a guess, not a limit' : ''}`;
}

function intervalText({ temperature, limit, low, high }: Omit<LimitAnswer, 'extrapolated'>): string {
  return `${formatQuantity(temperature, 'temperature')}: ${flow(limit)}, 95 % interval ${flow(low)} to ${flow(high)}`;
}

function deficit(fraction: number): string {
  return formatQuantity(fraction, 'ratio', { unit: '%', significantDigits: 6 });
}

function flow(value: number): string {
  return formatQuantity(value, 'volumeFlow', { significantDigits: 3 });
}

function digits(value: number): string {
  return formatNumber(value, { significantDigits: 3 });
}

function label(text: string): string {
  return text.padEnd(10);
}
