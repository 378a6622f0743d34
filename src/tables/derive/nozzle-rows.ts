import { fitLimitLine, type LimitLine } from '../../bench/limit-line/limit-line.ts';
import { temperatureForFlow } from '../../bench/limit-line/limit-line-answers.ts';
import type { Pairing } from '../../knowledge/pairing.ts';
import type { CubicMillimetresPerSecond } from '../../units/canonical.ts';
import { roundDown, roundUp } from '../../units/round-to-step.ts';
import type { BareCondition } from './condition-row.ts';
import type { MeltLimit } from './melt-limit.ts';
import { type PairingLimits, usableValue } from './pairing-limits.ts';

/** How many flows a line through several tested temperatures is read at. */
const readings = 5;

/**
 * The nozzle temperature that a flow needs, never outside of the tested range. Read from the lower end of the band of a
 * line through the limits, where at least two temperatures were tested with intervals; else the tested limits alone.
 */
export function nozzleRows(pairing: Pairing, limits: PairingLimits): BareCondition[] {
  const fitted = fitLimitLine(
    limits.melt.flatMap(({ value, nozzleTemperature, ground }) =>
      ground.interval === null ? [] : [{ temperature: nozzleTemperature, limit: value, ...ground.interval }],
    ),
  );
  if (fitted.ok) return lineRows(pairing, limits, fitted.value);
  const [only, ...others] = limits.melt;
  const note =
    others.length === 0 && only !== undefined
      ? `Only ${only.nozzleTemperature} Cel was tested.`
      : 'Tested limits alone: without intervals no line is drawn between them.';
  return limits.melt.map((limit) => ({
    name: 'nozzleTemperature',
    flow: usableFlow(pairing, limit, limit.value),
    window: { low: limit.nozzleTemperature, high: limit.nozzleTemperature },
    unit: 'Cel',
    sourcedValues: [limit.ground],
    note,
  }));
}

/** The flow of a table that a melt limit of a size allows: the policy's share of it, less its margin, rounded down. */
function usableFlow({ policy }: Pairing, limit: MeltLimit, flow: number): CubicMillimetresPerSecond {
  const { flowMargin, rounding } = policy.data;
  return roundDown(flow * (usableValue(limit) / limit.value) * (1 - flowMargin), rounding.flow);
}

function lineRows(pairing: Pairing, { melt, largestMelt }: PairingLimits, line: LimitLine): BareCondition[] {
  const [low, high] = [line.tested.low, line.tested.high];
  const limits = melt.filter(
    ({ nozzleTemperature }) => nozzleTemperature >= low && nozzleTemperature <= high,
  );
  const values = limits.map(({ value }) => value);
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const sourcedValues = limits.map(({ ground }) => ground);
  return Array.from(
    { length: readings },
    (_, index) => least + ((most - least) * index) / (readings - 1),
  ).flatMap((flow): BareCondition[] => {
    const answer = temperatureForFlow(line, flow);
    if (!answer.ok) return [];
    const step = pairing.policy.data.rounding.temperature ?? 1;
    const temperature = Math.min(roundUp(answer.value.temperature, step), high);
    return [
      {
        name: 'nozzleTemperature',
        flow: usableFlow(pairing, largestMelt, flow),
        window: { low: temperature, high: temperature },
        unit: 'Cel',
        sourcedValues,
        note: answer.value.isLowestTested
          ? 'The coolest that was tested; a cooler one might do.'
          : `Read from a line through limits tested from ${low} Cel to ${high} Cel.`,
      },
    ];
  });
}
