import { conditionsOf, type FittedPairing } from '../../knowledge/pairing.ts';
import { chooseStatement } from '../../registry/statement.ts';
import { shown, shownNumber } from '../../units/wording.ts';

const hour = 3600;

/** How the spool is to be dried before a run, as far as its profile says. */
export function dryingAdvice(pairing: FittedPairing): string {
  const { filament } = pairing;
  const conditions = conditionsOf(pairing);
  const temperature = chooseStatement(filament.data.dryingTemperature, conditions);
  const time = chooseStatement(filament.data.dryingTime, conditions);
  if (temperature === null) return `a dried spool of ${filament.id}; note the batch`;
  const duration = time === null ? '' : ` for ${shownNumber(time.value / hour)} h`;
  return `a spool of ${filament.id}, dried at ${shown(temperature.value, 'temperature')}${duration} (${temperature.basis}); note the batch`;
}

/** What lies at hand before a run that feeds hot melt. */
export const benchKit: readonly string[] = [
  'heat-proof gloves and eye protection; ventilation or extraction, switched on',
  'tweezers and flush cutters; a metal bucket for purged melt',
  'a room thermometer, ideally with a hygrometer; calipers for the filament; a marker and a steel rule',
];
