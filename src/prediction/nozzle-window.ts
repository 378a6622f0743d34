import { familyNames, nozzleLimit } from '../knowledge/families.ts';
import { linerLimits } from '../knowledge/liner-places.ts';
import { conditionsOf, type FittedPairing } from '../knowledge/pairing.ts';
import { highestStated } from '../registry/stated.ts';
import { chooseStatement } from '../registry/statement.ts';
import { type Problem, type Result, refusal, success } from '../result.ts';
import type { DegreesCelsius, Range } from '../units/canonical.ts';
import { shown, shownRange } from '../units/wording.ts';
import type { MeltSetup } from './melt-setup.ts';

/** One of the bounds that a nozzle temperature stays within. */
interface WindowBound {
  readonly low: DegreesCelsius | null;
  readonly high: DegreesCelsius;
  /** `200..240 Cel: the window of ashgrove/stagecraft-pla (claimed)`. */
  readonly text: string;
}

/** The nozzle temperatures that filament, polymer, hot end and liner allow together. */
interface NozzleWindow extends Range {
  readonly bounds: readonly WindowBound[];
}

/** The window of a pairing. The problem says which bounds leave nothing. */
export function nozzleWindow(
  pairing: FittedPairing,
  families: MeltSetup['families'],
): Result<NozzleWindow, Problem<'noTemperature'>> {
  const bounds = boundsOf(pairing, families);
  const low = Math.max(...bounds.map((bound) => bound.low ?? Number.NEGATIVE_INFINITY));
  const high = Math.min(...bounds.map((bound) => bound.high));
  if (Number.isFinite(low) && low <= high) return success({ low, high, bounds });
  const { filament, machine } = pairing;
  return refusal(
    'noTemperature',
    `No nozzle temperature suits ${filament.id} on ${machine.id}: ${bounds.map(({ text }) => text).join('; ')}`,
    'Choose another machine or filament, or correct their profiles.',
  );
}

function boundsOf(pairing: FittedPairing, families: MeltSetup['families']): WindowBound[] {
  const { filament, hotEnd, machine } = pairing;
  const window = chooseStatement(filament.data.nozzleTemperature, conditionsOf(pairing));
  const polymer = nozzleLimit(families);
  const hotEndLimit = highestStated(hotEnd.temperatureLimit);
  const bounds: (WindowBound | null)[] = [
    window && {
      ...window.value,
      text: `${shownRange(window.value, 'temperature')}: the window of ${filament.id} (${window.basis})`,
    },
    polymer && upTo(polymer.value, `${familyNames(families)} must not get hotter`),
    hotEndLimit === null ? null : upTo(hotEndLimit, `the limit of hot end "${hotEnd.id}" of ${machine.id}`),
    hotEnd.liner === 'polymer' ? upTo(linerLimits.low, 'the polymer liner must not get hotter') : null,
  ];
  return bounds.filter((bound) => bound !== null);
}

function upTo(high: DegreesCelsius, reason: string): WindowBound {
  return { low: null, high, text: `up to ${shown(high, 'temperature')}: ${reason}` };
}
