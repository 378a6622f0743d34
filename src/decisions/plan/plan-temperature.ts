import type { AllowedTemperatures, PlannedTemperature } from '../../bench/layout/layout-request.ts';
import type { FittedPairing } from '../../knowledge/pairing.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import { middle } from '../../statistics/middle.ts';
import type { DegreesCelsius } from '../../units/canonical.ts';
import { shown, shownRange } from '../../units/wording.ts';

/** What settings are rounded to, in K. */
const temperatureStep = 5;

/**
 * The asked temperature, else the one that a claim for this nozzle and family names, else the middle of the window. The
 * problem says which bounds the asked one lies outside of.
 */
export function planTemperature(
  pairing: FittedPairing,
  window: AllowedTemperatures,
  asked: DegreesCelsius | undefined,
): Result<PlannedTemperature, Problem<'outsideWindow'>> {
  const inside = (value: DegreesCelsius) => value >= window.low && value <= window.high;
  if (asked !== undefined && !inside(asked)) {
    return refusal(
      'outsideWindow',
      `${shown(asked, 'temperature')} is outside the range that the profiles allow, ${shownRange(window, 'temperature')}: ${window.bounds.map(({ text }) => text).join('; ')}`,
      'Ask for a temperature inside it.',
    );
  }
  if (asked !== undefined) return success({ value: asked, reason: 'as asked' });
  const claimed = claimedTemperature(pairing);
  if (claimed !== null && inside(claimed)) {
    return success({ value: claimed, reason: 'the temperature of the claimed flow of this nozzle' });
  }
  const centre = middle(window);
  const rounded = Math.round(centre / temperatureStep) * temperatureStep;
  return success({ value: inside(rounded) ? rounded : centre, reason: 'the middle of the window' });
}

function claimedTemperature({ hotEnd, nozzle, filament }: FittedPairing): DegreesCelsius | null {
  const claim = (hotEnd.meltFlow ?? []).find(
    ({ basis, at }) =>
      basis === 'claimed' &&
      at?.nozzle === nozzle.id &&
      (at.polymer ?? filament.data.polymer) === filament.data.polymer &&
      at.nozzleTemperature !== undefined,
  );
  return claim?.at?.nozzleTemperature ?? null;
}
