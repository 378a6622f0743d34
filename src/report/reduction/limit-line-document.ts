import { leastAgreement } from '../../bench/limit-line/combined-limits.ts';
import type { LimitLine } from '../../bench/limit-line/limit-line.ts';
import type { LimitAnswer } from '../../bench/limit-line/limit-line-answers.ts';
import type { PairingReduction, TrialBound } from '../../bench/limit-line/pairing-reduction.ts';
import { tableCautions } from '../../knowledge/cautions.ts';
import { type Origin, originBlocks } from '../../knowledge/origin.ts';
import {
  type Column,
  cautions,
  type Document,
  type Fact,
  facts,
  section,
  table,
  warnings,
} from '../../text/document.ts';
import { counted } from '../../text/words.ts';
import { formatNumber, formatQuantity, formatRange } from '../../units/format-quantity.ts';
import { limitLineWarnings } from './limit-line-warnings.ts';

/** What the flow ladders of a pairing say of the limit against the nozzle temperature, for people. */
export function limitLineDocument(
  pairing: PairingReduction,
  answers: readonly LimitAnswer[],
  origin?: Origin,
): Document {
  const { filament, machine, nozzle, line } = pairing;
  return {
    title: `${filament} on ${machine}, nozzle ${nozzle}: limit against nozzle temperature`,
    answer: answerText(pairing, answers),
    blocks: [
      ...(origin === undefined ? [] : originBlocks(origin)),
      facts(...pairingFacts(pairing)),
      table(columns, [
        ...answers.map((answer) => pointCells(answer, answer.extrapolated ? beyondTested : 'the line')),
        ...pairing.limits.map((point) => pointCells(point, point.trial)),
        ...pairing.bounds.map(boundCells),
        ...pairing.temperatures
          .filter(({ trials }) => trials > 1)
          .map((point) => pointCells(point, combinedText(point))),
      ]),
      ...(line === null ? [] : [section('The line', [facts(...lineFacts(line))])]),
      warnings(limitLineWarnings(pairing)),
      cautions(tableCautions),
    ],
  };
}

/** What several trials at one temperature come to, by the test whether they agree. */
function combinedText({ trials, agreement }: PairingReduction['temperatures'][number]): string {
  if (agreement === null) return counted(trials, 'trial');
  const chance = `chi-squared test, p ${formatNumber(agreement, { significantDigits: 2 })}`;
  return agreement < leastAgreement
    ? `the lowest of ${trials} trials, which disagree (${chance})`
    : `${trials} trials combined, which agree (${chance})`;
}

const columns: readonly Column[] = [
  { heading: 'nozzle temperature', align: 'right' },
  { heading: 'melt flow limit', align: 'right' },
  { heading: '95 % interval', align: 'right' },
  { heading: 'from', align: 'left', wraps: true },
];

const beyondTested = 'EXTRAPOLATED beyond the tested temperatures: a guess, not a limit';

/** The limit at the first temperature that was asked for, else where the line is known best, else how many limits there are. */
function answerText({ line, limits, origin }: PairingReduction, [asked]: readonly LimitAnswer[]): string {
  const readings = origin === 'bench' ? '' : ` (${origins[origin]} readings)`;
  if (asked !== undefined) {
    const guess = asked.extrapolated ? `, ${beyondTested}` : '';
    return `At ${celsius(asked.temperature)} the limit is ${flow(asked.limit)}, 95 % interval ${flowRange(asked)}${guess}${readings}.`;
  }
  if (line === null)
    return `${counted(limits.length, 'limit')}: too few nozzle temperatures for a line${readings}.`;
  return `The limit is ${centreText(line)}${readings}.`;
}

const origins = { bench: 'from the bench', simulated: 'simulated', mixed: 'partly simulated' } as const;

function pairingFacts({ origin, otherNozzles, acceptedDeficit, line }: PairingReduction): Fact[] {
  const others = otherNozzles.length === 0 ? '' : ` (ladders also on ${otherNozzles.join(', ')})`;
  return [
    ['readings', `${origins[origin]}${others}`],
    ...(acceptedDeficit === null ? [] : [['accepted', `${percent(acceptedDeficit)} deficit`] satisfies Fact]),
    ...(line === null ? [] : [['tested', celsiusRange(line.tested)] satisfies Fact]),
  ];
}

function pointCells(point: Omit<LimitAnswer, 'extrapolated'>, from: string): string[] {
  return [celsius(point.temperature), flow(point.limit), flowRange(point), from];
}

function boundCells({ temperature, bound, censored, trial }: TrialBound): string[] {
  return [celsius(temperature), `${censored === 'above' ? 'at least' : 'below'} ${flow(bound)}`, '', trial];
}

function lineFacts(line: LimitLine): Fact[] {
  const uncertainty = formatNumber(line.slopeUncertainty, { significantDigits: 2 });
  return [
    ['known best', centreText(line)],
    ['slope', `${digits(line.slope)} mm3/s/K, standard uncertainty ${uncertainty} mm3/s/K`],
    ['intercept', `${digits(line.intercept)} mm3/s at 0 Cel, which fixes the line and is no limit`],
  ];
}

/** `43.3 mm3/s at 223.1 Cel, 0.243 mm3/s more per K`. */
function centreText({ centre, slope }: LimitLine): string {
  const middle = formatQuantity(centre.temperature, 'temperature', { decimals: 1 });
  const change = `${digits(Math.abs(slope))} mm3/s ${slope < 0 ? 'less' : 'more'} per K`;
  return `${flow(centre.limit)} at ${middle}, ${change}`;
}

function celsius(value: number): string {
  return formatQuantity(value, 'temperature');
}

function celsiusRange({ low, high }: LimitLine['tested']): string {
  return formatRange(low, high, 'temperature');
}

function percent(fraction: number): string {
  return formatQuantity(fraction, 'ratio', { unit: '%', significantDigits: 6 });
}

function flow(value: number): string {
  return formatQuantity(value, 'volumeFlow', { significantDigits: 3 });
}

function flowRange({ low, high }: { readonly low: number; readonly high: number }): string {
  return formatRange(low, high, 'volumeFlow', { significantDigits: 3 });
}

function digits(value: number): string {
  return formatNumber(value, { significantDigits: 3 });
}
