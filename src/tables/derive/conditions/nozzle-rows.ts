import type { Pairing } from '../../../knowledge/pairing.ts';
import type { CubicMillimetresPerSecond } from '../../../units/canonical.ts';
import { roundDown } from '../../../units/round-to-step.ts';
import type { MeltAt } from '../limits/melt-at.ts';
import type { PairingLimits } from '../limits/pairing-limits.ts';
import { usableValue } from '../limits/usable-limit.ts';
import { type BareCondition, isSet } from './condition-row.ts';

/** The nozzle temperature of the table, with the flow that it feeds, and that of the first layer. */
export function nozzleRows(pairing: Pairing, limits: PairingLimits): BareCondition[] {
  const { print, firstLayer } = limits;
  const at = (melt: MeltAt) => ({ low: melt.nozzleTemperature, high: melt.nozzleTemperature });
  return [
    {
      ...isSet(
        'nozzleTemperature',
        'Cel',
        at(print),
        print.limits.map(({ ground }) => ground),
      ),
      flow: usableFlow(pairing, print),
      note: whatWasTested(limits),
    },
    {
      ...isSet('firstLayerNozzleTemperature', 'Cel', at(firstLayer.melt), [
        ...firstLayer.sourcedValues,
        ...firstLayer.melt.limits.map(({ ground }) => ground),
      ]),
      flow: usableFlow(pairing, firstLayer.melt),
      isStated: firstLayer.isStated,
      note: firstLayer.note,
    },
  ];
}

/** The most flow of a table at a temperature: the policy's share of the limit, less its margin, rounded down. */
export function usableFlow(
  { policy }: Pick<Pairing, 'policy'>,
  melt: Pick<MeltAt, 'value' | 'cap'>,
): CubicMillimetresPerSecond {
  const { flowMargin, rounding } = policy.data;
  return roundDown(usableValue(melt) * (1 - flowMargin), rounding.flow);
}

/** What was tested, and whose choice of it the temperature is. */
function whatWasTested({ melt, print, chosenBy }: PairingLimits): string {
  const temperatures = melt.map(({ nozzleTemperature }) => nozzleTemperature);
  const [coolest, hottest] = [Math.min(...temperatures), Math.max(...temperatures)];
  if (coolest === hottest) return `Only ${coolest} Cel was tested.`;
  const range = `${temperatures.length} temperatures from ${coolest} Cel to ${hottest} Cel were tested`;
  return print.line === null
    ? `${range}; ${chosenBy}.`
    : `Read from the line through limits; ${range}; ${chosenBy}.`;
}
