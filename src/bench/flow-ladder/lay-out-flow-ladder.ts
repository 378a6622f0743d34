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
      'If the machine stopped or the drive ground the strand, take the # away and write the flow at which it did:',
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
    { heading: 'What speaks for it', items: ladder.expected.reasons },
    { heading: 'Ladder', items: ladderItems(ladder) },
    { heading: 'Nozzle temperature', items: temperatureItems(ladder) },
    { heading: 'In all', items: totalItems(pairing, ladder) },
    {
      heading: 'At hand',
      items: [
        `a scale that steps by ${shown(ladder.resolution, 'mass')}`,
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
      ? 'beyond the expected range, so that the onset is crossed'
      : `where heater and drive end (${shownNumber(Number(expected.highest.toPrecision(3)))} mm3/s); if the onset is not crossed by then, the limit is a lower bound`;
  return [
    `${flows.length} flows from ${shown(flows[0] ?? 0, 'volumeFlow')} to ${shown(last, 'volumeFlow')} in steps of ${shown(size, 'volumeFlow')}, rising, ${repeats} pieces each; the end lies ${end}`,
    `feed ${shown(piece.length, 'length')} of strand a piece into free air, fans off; at full delivery it weighs ${shown(Number(piece.mass.toPrecision(4)), 'mass')}, of which the step of the scale, ${shown(resolution, 'mass')}, is ${shownNumber(Number((100 * piece.scaleShare).toPrecision(2)))} %`,
    'purge a little at the flow of the step before each piece; cut, let it cool, weigh, write it down',
    'stop when two flows in a row lack more than a quarter of the mass, or when the drive begins to click or grind; delete the rows of the sheet that were not run',
    'where the mass falls by more than a few per cent from one flow to the next, add flows in between',
  ];
}

function temperatureItems({ nozzleTemperature, allowed, series }: LadderPlan): string[] {
  const others = series.filter((temperature) => temperature !== nozzleTemperature.value);
  return [
    `${shown(nozzleTemperature.value, 'temperature')}: ${nozzleTemperature.reason}; soak until it has stood still for some minutes`,
    `allowed here ${shownRange(allowed, 'temperature')}`,
    ...allowed.bounds.map(({ text }) => text),
    ...(others.length > 0
      ? [`for the limit against the temperature, run the same ladder at ${others.join(', ')} Cel too`]
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
    `${steps.flows.length * repeats} pieces from ${(totals.length / 1000).toFixed(1)} m of strand, ${totals.mass.toFixed(0)} g${share}, with 100 mm purged before each piece`,
    `${Math.ceil(totals.feeding / 60)} min of feeding, about ${Math.ceil(totals.bench / 300) * 5} min with warming up, cutting, weighing and writing down`,
  ];
}
