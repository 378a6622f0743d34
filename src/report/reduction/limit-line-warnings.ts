import { type CombinedLimit, leastAgreement } from '../../bench/limit-line/combined-limits.ts';
import type { LimitLine } from '../../bench/limit-line/limit-line.ts';
import { limitAt } from '../../bench/limit-line/limit-line-answers.ts';
import type { PairingReduction, TrialBound } from '../../bench/limit-line/pairing-reduction.ts';
import { normalFactor, priorScatter } from '../../statistics/scatter.ts';
import { formatNumber, formatQuantity } from '../../units/format-quantity.ts';

/** What a reader should know before relying on a line of limits; each a sentence that says what would help. */
export function limitLineWarnings(pairing: PairingReduction): string[] {
  const { line, bounds, leftOut, temperatures } = pairing;
  return [
    ...(line === null ? [needsTwo(temperatures.length)] : lineWarnings(line)),
    ...temperatures.flatMap(disagreement),
    ...bounds.map((bound) => boundWarning(bound, line)),
    ...leftOut.map(({ trial, reason }) => `${trial} does not count: ${reason}.`),
  ];
}

/** Trials at one temperature that do not agree. */
function disagreement({ temperature, trials, agreement }: CombinedLimit): string[] {
  if (agreement === null || agreement >= leastAgreement) return [];
  return [
    `The ${trials} trials at ${formatQuantity(temperature, 'temperature')} disagree by more than their intervals explain: the lowest limit counts there. Look at batch, nozzle wear and drying, or repeat one.`,
  ];
}

function needsTwo(temperatures: number): string {
  const found = temperatures === 0 ? 'there is none' : 'there is one';
  return `A line needs limits at two nozzle temperatures at least, and ${found}; run the ladder at another temperature.`;
}

function lineWarnings(line: LimitLine): string[] {
  const warnings: string[] = [];
  const { residualDegreesOfFreedom, effectiveDegreesOfFreedom: freedom, birgeRatio, coverageFactor } = line;
  if (residualDegreesOfFreedom === 0) {
    warnings.push(
      'Two limits leave nothing to judge the straight line by: its band is what their intervals propagate to; a third temperature would test it.',
    );
  }
  if (residualDegreesOfFreedom > 0 && residualDegreesOfFreedom < priorScatter.freedom) {
    warnings.push(
      `Three limits show next to nothing of how far ladders differ from run to run: a prior stands for a fourth, ${priorScatter.birgeRatio} times the scatter that the intervals explain. A fourth ladder would test it.`,
    );
  }
  if (freedom !== null && birgeRatio !== null && birgeRatio > 1) {
    const factor = (birgeRatio * coverageFactor) / normalFactor;
    warnings.push(
      `The limits scatter ${threeDigits(birgeRatio)} times as far about the line as their intervals explain, which is known with ${freedom} degrees of freedom only: the band is ${threeDigits(factor)} times as wide as the intervals alone would make it. Another ladder would narrow it.`,
    );
  }
  if (Math.abs(line.slope) < coverageFactor * line.slopeUncertainty) {
    warnings.push(
      'The slope cannot be told from zero: the tested temperatures lie too close together, or the melt is not what limits the flow.',
    );
  }
  return warnings;
}

function boundWarning({ trial, temperature, bound, censored }: TrialBound, line: LimitLine | null): string {
  const place = `${trial} at ${formatQuantity(temperature, 'temperature')}`;
  const words = `${censored === 'above' ? 'at least' : 'below'} ${flow(bound)}`;
  const start = `${place} gives a bound only, ${words}, which cannot enter a least-squares fit`;
  const fitted = line === null ? null : limitAt(line, temperature);
  if (fitted?.ok) {
    const { low, high } = fitted.value;
    if (censored === 'above' ? high < bound : low > bound) {
      return `${start}; the line contradicts it: repeat that ladder, with steps on both sides of the limit.`;
    }
  }
  return `${start}; a ladder that reaches the accepted deficit would.`;
}

function flow(value: number): string {
  return formatQuantity(value, 'volumeFlow', { significantDigits: 3 });
}

function threeDigits(value: number): string {
  return formatNumber(value, { significantDigits: 3 });
}
