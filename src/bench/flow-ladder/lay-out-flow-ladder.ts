import type { FittedPairing } from '../../knowledge/pairing.ts';
import { type Result, success } from '../../result.ts';
import { shown, shownNumber, shownRange } from '../../units/wording.ts';
import { benchKit, dryingAdvice } from '../layout/bench-kit.ts';
import type { LayoutRequest } from '../layout/layout-request.ts';
import type { PlanProblem } from '../layout/plan-problem.ts';
import type { PlanRow, PlanSection, RunLayout } from '../layout/run-layout.ts';
import { usualAcceptedDeficit } from './flow-ladder-settings.ts';
import { haltItems } from './halt-advice.ts';
import { type LadderPlan, ladderPlan } from './ladder-plan.ts';
import { ladderPlanFacts } from './ladder-plan-facts.ts';

/** The next flow ladder of a pairing. */
export function layOutFlowLadder(request: LayoutRequest): Result<RunLayout, PlanProblem> {
  const planned = ladderPlan(request);
  if (!planned.ok) return planned;
  const ladder = planned.value;
  const temperature = shown(ladder.nozzleTemperature.value, 'temperature');
  return success({
    name: 'Flow ladder',
    detail: temperature,
    idWord: temperature.replace(/ .*/, ''),
    sections: sectionsOf(request.pairing, ladder),
    given: [
      { name: 'commandedFlow', unit: 'mm3/s' },
      { name: 'feedLength', unit: 'mm' },
    ],
    read: [{ name: 'extrudedMass', unit: 'g' }],
    hints: ['feed mm/s', 'feed mm/min', 'piece s', 'full mass g'],
    rows: rowsOf(ladder),
    repeats: ladder.repeats,
    conditions: [`nozzleTemperature: ${temperature}`, '# ambientTemperature: 22 Cel'],
    keys: [
      `acceptedDeficit: ${shown(usualAcceptedDeficit, 'ratio')}`,
      `scale: {resolution: ${shown(ladder.resolution, 'mass')}}`,
    ],
    afterwards: [
      'If the machine stopped or the drive stripped the filament, remove the # and write the flow at which it happened:',
      'events:',
      `  - {event: halted, commandedFlow: ${shown(lateFlow(ladder), 'volumeFlow')}, note: What stopped it}`,
    ],
    facts: ladderPlanFacts(ladder),
  });
}

/** A flow of the ladder at which a machine may well stop, for examples. */
function lateFlow({ steps: { flows } }: LadderPlan): number {
  return flows.at(-2) ?? flows.at(-1) ?? 0;
}

function rowsOf({ feeds, piece }: LadderPlan): PlanRow[] {
  return feeds.map(({ flow, feed, duration }) => ({
    given: [flow, piece.length],
    hints: [feed.toFixed(2), (feed * 60).toFixed(0), duration.toFixed(1), piece.mass.toFixed(3)],
  }));
}

function sectionsOf(pairing: FittedPairing, ladder: LadderPlan): PlanSection[] {
  return [
    { heading: 'Expected limit', items: ladder.expected.items },
    { heading: 'Why', items: ladder.expected.reasons },
    { heading: 'Ladder', items: ladderItems(ladder) },
    { heading: 'Nozzle temperature', items: temperatureItems(ladder) },
    { heading: 'In total', items: totalItems(pairing, ladder) },
    {
      heading: 'What you need',
      items: [
        `a scale with a resolution of ${shown(ladder.resolution, 'mass')}`,
        dryingAdvice(pairing),
        ...benchKit,
      ],
    },
    { heading: 'If the machine stops', items: haltItems(pairing.machine.data, lateFlow(ladder)) },
  ];
}

function ladderItems({ steps, repeats, piece, resolution, expected }: LadderPlan): string[] {
  const { size, flows } = steps;
  const last = flows.at(-1) ?? 0;
  const end =
    last >= expected.range.high
      ? 'The top is above the expected range, so that the onset is passed'
      : `The top is where heater or drive reach their limit (${shownNumber(Number(expected.highest.toPrecision(3)))} mm3/s); if the onset is not passed by then, the result is a lower bound`;
  return [
    `${flows.length} flows from ${shown(flows[0] ?? 0, 'volumeFlow')} to ${shown(last, 'volumeFlow')} in steps of ${shown(size, 'volumeFlow')}, rising, ${repeats} pieces each. ${end}`,
    `feed ${shown(piece.length, 'length')} of filament per piece into free air, fans off; at full delivery a piece weighs ${shown(Number(piece.mass.toPrecision(4)), 'mass')} and the resolution of the scale, ${shown(resolution, 'mass')}, is ${shownNumber(Number((100 * piece.scaleShare).toPrecision(2)))} %`,
    'before each piece, purge a little at the flow of the step; cut, let it cool, weigh it, write it down',
    'stop when more than a quarter of the mass is missing at two flows in a row, or when the drive starts to click or grind; delete the rows that were not run',
    'where the mass falls by more than a few per cent from one flow to the next, add flows in between',
  ];
}

function temperatureItems({ nozzleTemperature, allowed, series }: LadderPlan): string[] {
  const others = series.filter((temperature) => temperature !== nozzleTemperature.value);
  return [
    `${shown(nozzleTemperature.value, 'temperature')}: ${nozzleTemperature.reason}; wait until it has been stable for some minutes`,
    `allowed range ${shownRange(allowed, 'temperature')}`,
    ...allowed.bounds.map(({ text }) => text),
    ...(others.length > 0
      ? [`for the limit at other temperatures, run the same ladder at ${others.join(', ')} Cel too`]
      : []),
  ];
}

function totalItems({ filament }: FittedPairing, { totals, steps, repeats }: LadderPlan): string[] {
  const { spoolMass } = filament.data;
  const share =
    spoolMass === undefined
      ? ''
      : `, ${shownNumber(Number(((100 * totals.mass) / spoolMass).toPrecision(2)))} % of the spool`;
  return [
    `${steps.flows.length * repeats} pieces from ${(totals.length / 1000).toFixed(1)} m of filament, ${totals.mass.toFixed(0)} g${share}, including 100 mm purged before each piece`,
    `${Math.ceil(totals.feeding / 60)} min of feeding, and about ${Math.ceil(totals.bench / 300) * 5} min including warming up, cutting, weighing and writing down`,
  ];
}
