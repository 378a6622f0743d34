import { formatQuirk } from '../../knowledge/quirk-words.ts';
import type { Quirk } from '../../knowledge/quirks.ts';
import { type Block, type Fact, numberedList, section } from '../../text/document.ts';
import { enumerated, wordsOf } from '../../text/words.ts';
import { formatNumber } from '../../units/format-quantity.ts';
import { sourcedValuesIn } from '../derive/calculation.ts';
import type { HouseCap, SpeedTable } from '../derive/speed-table.ts';
import { basisText, withUnit } from './words.ts';

/** What to set the nozzle to: `Set the nozzle to 240 °C, for the first layer to 220 °C.` */
export function temperaturesText({ temperatures: { print, firstLayer } }: SpeedTable): string {
  const first = firstLayer === print ? '' : `, for the first layer to ${withUnit(firstLayer, 'Cel')}`;
  return `Set the nozzle to ${withUnit(print, 'Cel')}${first}.`;
}

/** The largest flow at that temperature with its interval, deficit and basis, and what the house uses of it. */
export function largestFlowText({ largestFlow }: SpeedTable): string {
  const { usable, basis, isSimulated } = largestFlow;
  const ground = basisText(basis, isSimulated ? ['simulated'] : []);
  return `Largest flow ${flowLimitText(largestFlow)}, ${ground}; the house uses ${withUnit(usable, 'mm3/s')} of it.`;
}

/** Whose choice the temperature is, and what shows the limit there. */
export function groundFacts({ largestFlow, temperatures: { print } }: SpeedTable): Fact[] {
  const { trials, chosenBy, isInterpolated, note } = largestFlow;
  const read = isInterpolated ? 'read off the line through the limits of ' : '';
  const shown =
    trials.length === 0
      ? 'no trial'
      : read + enumerated(trials.map(({ id, date }) => `trial ${id} of ${date}`));
  return [
    ['Temperature', `${withUnit(print, 'Cel')}, ${chosenBy}`],
    ['Flow shown by', shown],
    ...(note === null ? [] : [['Note', note.replace(/\s+/g, ' ').trim()] as const]),
  ];
}

/**
 * The limit with its interval and deficit: `48.8 mm³/s (47.8 to 49.6, at 5 % deficit)`. A limit without an interval may be
 * a lower bound, whose ladder never came to its deficit.
 */
export function flowLimitText({
  limit,
  interval,
  acceptedDeficit,
  isInterpolated,
}: SpeedTable['largestFlow']): string {
  const range = interval === null ? [] : [`${digits(interval.low)} to ${digits(interval.high)}`];
  const parts = [
    ...(isInterpolated ? ['lower end of the 95 % band of a line'] : range),
    ...(acceptedDeficit === null || interval === null
      ? []
      : [`at ${digits(100 * acceptedDeficit)} % deficit`]),
  ];
  const inBrackets = parts.length === 0 ? '' : ` (${parts.join(', ')})`;
  return `${withUnit(digits(limit), 'mm3/s')}${inBrackets}`;
}

/** `first layer: at most 40 mm/s and 1000 mm/s²: Adhesion to the bed`. */
export function capText({ feature, speed, acceleration, reason }: HouseCap): string {
  const caps = [
    ...(speed === null ? [] : [withUnit(speed, 'mm/s')]),
    ...(acceleration === null ? [] : [withUnit(acceleration, 'mm/s2')]),
  ];
  return `${wordsOf(feature)}: at most ${caps.join(' and ')}: ${reason.replace(/\s+/g, ' ').trim()}`;
}

/** What holds speeds and is not measured, so that the bench knows what to test next; null where all is. */
export function untestedText({ rows }: SpeedTable): string | null {
  const grounds = rows.flatMap(({ bounds }) => bounds.slice(0, 1)).flatMap(sourcedValuesIn);
  const names = grounds.flatMap(({ what, basis }) =>
    basis === null || basis === 'measured' || basis === 'published' ? [] : [`${what} (${basis})`],
  );
  const distinct = [...new Set(names)];
  return distinct.length === 0 ? null : `To go by measurements alone, test next: ${enumerated(distinct)}.`;
}

/** The quirks of a pairing, numbered, so that rows can name them. */
export function quirkBlocks(quirks: readonly Quirk[]): Block[] {
  return quirks.length === 0
    ? []
    : [section('Quirks, the newest first', [numberedList(quirks.map(formatQuirk))])];
}

function digits(value: number): number {
  return Number(formatNumber(value, { significantDigits: 4 }));
}
