import type { ReducedResult } from '../bench/reduction.ts';
import type { CubicMillimetresPerSecond, Range } from '../units/canonical.ts';
import { rounded } from '../units/rounded.ts';
import { shown, shownNumber, shownRange } from '../units/wording.ts';
import type { Prediction } from './prediction.ts';
import { kinshipText, type SiblingTrial } from './sibling-trials.ts';
import { statedFlowText } from './stated-flow.ts';

/** More trials than this are counted, not named. */
const mostNamed = 8;

/** A flow as predictions say it: three digits are more than a prediction holds. */
export function flowText(value: CubicMillimetresPerSecond): string {
  return shown(rounded(value, 3), 'volumeFlow');
}

export function flowRangeText({ low, high }: Range): string {
  return shownRange({ low: rounded(low, 3), high: rounded(high, 3) }, 'volumeFlow');
}

/** The prediction and what it rests on, one sentence an item. */
export function predictionItems(prediction: Prediction): string[] {
  const { value, range, cappedBy } = prediction;
  return [
    `${flowText(value)}, probably ${flowRangeText(range)}: an estimate to plan the ladder, not a measurement`,
    `based on ${originText(prediction)}`,
    ...(cappedBy === null ? [] : [`reduced to ${flowText(cappedBy.flow)}: ${cappedBy.text}`]),
  ];
}

function originText({ from, trials }: Prediction): string {
  if (from === 'stated')
    return 'the flow stated for the hot end; ladders usually reach about three quarters of it';
  if (from === 'conduction')
    return 'heat conduction into the filament alone; ladders reach between half and twice of it';
  return trials.length === 1 ? `the trial ${trials[0]}` : `${trials.length} trials: ${trials.join(', ')}`;
}

/** Everything that speaks for a flow limit, each with its figure. */
export function reasonItems(prediction: Prediction): string[] {
  const { siblings, stated, capacity, caps } = prediction;
  const more = siblings.length - mostNamed;
  return [
    ...siblings.slice(0, mostNamed).map(siblingText),
    ...(more > 0 ? [`and ${more} more ${more === 1 ? 'trial' : 'trials'}, less similar`] : []),
    ...(stated === null ? [] : [`${statedFlowText(stated)}: ${flowText(stated.scaled)} expected from it`]),
    ...(capacity === null
      ? []
      : [
          `heat conduction into the filament over ${shown(capacity.meltZoneLength, 'length')} of melt zone: ${flowText(capacity.flow)} come out with a core at ${shown(capacity.coreTemperature, 'temperature')}, where it begins to flow (with the heat of melting, diffusivity ${shownNumber(rounded(capacity.diffusivity, 3))} mm2/s from ${capacity.source})`,
        ]),
    ...caps.map(({ flow, text }) => `at most ${flowText(flow)}: ${text}`),
  ];
}

function siblingText(trial: SiblingTrial): string {
  const { id, kinship, machine, nozzle, filament, nozzleTemperature, limit, scaled, spread } = trial;
  const { low, high } = { low: scaled / spread, high: scaled * spread };
  return `trial ${id}, ${kinshipText[kinship]} (${filament} on ${machine}, ${nozzle}, ${shown(nozzleTemperature, 'temperature')}): ${limitText(limit)}, scaled to this pairing ${flowText(scaled)} (${flowRangeText({ low, high })})`;
}

function limitText({ value, interval: { low, high }, censored }: ReducedResult): string {
  if (censored === 'above') return `at least ${flowText(value)}`;
  if (censored === 'below') return `below ${flowText(value)}`;
  return low === null || high === null
    ? flowText(value)
    : `${flowText(value)} (95 % interval ${flowRangeText({ low, high })})`;
}
