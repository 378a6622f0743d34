import { conditionsOf, type Pairing } from '../../../knowledge/pairing.ts';
import { offsetText, type PartOffset, partOffset } from '../../../knowledge/part-offset.ts';
import type { CubicMillimetresPerSecond } from '../../../units/canonical.ts';
import { roundDown } from '../../../units/round-to-step.ts';
import { rounded } from '../../../units/rounded.ts';
import { shown } from '../../../units/wording.ts';
import type { MeltAt } from '../limits/melt-at.ts';
import type { PairingLimits } from '../limits/pairing-limits.ts';
import type { TractionLimit } from '../limits/traction-limit.ts';
import { usableValue } from '../limits/usable-limit.ts';
import { sourcedStatement } from '../sourced-value.ts';
import { type BareCondition, isSet } from './condition-row.ts';

/** The nozzle temperature of the table, with the flow that it feeds, and that of the first layer. */
export function nozzleRows(pairing: Pairing, limits: PairingLimits): BareCondition[] {
  const { print, firstLayer } = limits;
  const at = (melt: MeltAt) => ({ low: melt.nozzleTemperature, high: melt.nozzleTemperature });
  const offset = partOffset(pairing.machine.data, 'nozzle', conditionsOf(pairing));
  const checked = offset === null ? [] : [sourcedStatement(pairing.machine, offset.statement)];
  return [
    {
      ...isSet('nozzleTemperature', 'Cel', at(print), [
        ...print.limits.map(({ ground }) => ground),
        ...checked,
      ]),
      flow: usableFlow(pairing, print, limits.traction.print),
      note: [whatWasTested(limits), ...(offset === null ? [] : [asSet(print, offset)])].join(' '),
    },
    {
      ...isSet('firstLayerNozzleTemperature', 'Cel', at(firstLayer.melt), [
        ...firstLayer.sourcedValues,
        ...firstLayer.melt.limits.map(({ ground }) => ground),
      ]),
      flow: usableFlow(pairing, firstLayer.melt, limits.traction.firstLayer),
      isStated: firstLayer.isStated,
      note: firstLayer.note,
    },
  ];
}

/**
 * The most flow of a table at a temperature, rounded down: the policy's share of what melts, at most what the drive pushes,
 * less its margin.
 */
export function usableFlow(
  { policy }: Pick<Pairing, 'policy'>,
  melt: Pick<MeltAt, 'value' | 'cap'>,
  traction: TractionLimit | null,
): CubicMillimetresPerSecond {
  const { flowMargin, rounding } = policy.data;
  const flow = Math.min(usableValue(melt), traction?.flow ?? Number.POSITIVE_INFINITY);
  return roundDown(flow * (1 - flowMargin), rounding.flow);
}

/** Ladders are run at set temperatures of the machine, so that its offset is in their limits already. */
function asSet({ nozzleTemperature }: MeltAt, offset: PartOffset): string {
  const real = shown(rounded(nozzleTemperature + offset.value, 3), 'temperature');
  return `To set as it was on the bench; the nozzle is ${offsetText(offset)}, at about ${real}.`;
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
