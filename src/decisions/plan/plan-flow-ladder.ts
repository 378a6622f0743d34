import { usualAcceptedDeficit } from '../../bench/flow-ladder/flow-ladder-settings.ts';
import { reduceTrial } from '../../bench/reduce-trial.ts';
import type { ReduceById } from '../../bench/reducing-once.ts';
import type { FittedPairing } from '../../knowledge/pairing.ts';
import { predictionItems, reasonItems } from '../../prediction/prediction-text.ts';
import type { Registry } from '../../registry/registry.ts';
import { type Result, success } from '../../result.ts';
import { shown, shownNumber, shownRange } from '../../units/wording.ts';
import type { BenchPlan, PlanRow, PlanSection } from './bench-plan.ts';
import { dryingAdvice } from './drying-advice.ts';
import { haltItems } from './halt-advice.ts';
import { ladderFacts } from './ladder-facts.ts';
import type { LadderPlan } from './ladder-plan.ts';
import { layOutLadder } from './lay-out-ladder.ts';
import { benchKit, planCautions } from './plan-cautions.ts';
import type { PlanRequest } from './plan-request.ts';
import { freeTrialId } from './trial-id.ts';

/** The next flow ladder of a pairing; the error is a sentence for the user. */
export function planFlowLadder(
  registry: Registry,
  pairing: FittedPairing,
  request: PlanRequest,
  reduce: ReduceById = (id) => reduceTrial(registry, id),
): Result<BenchPlan, string> {
  const laidOut = layOutLadder(registry, pairing, request, reduce);
  if (!laidOut.ok) return laidOut;
  const ladder = laidOut.value;
  const { machine, nozzle, filament } = pairing;
  const temperature = shown(ladder.setup.nozzleTemperature, 'temperature');
  return success({
    method: 'flowLadder',
    title: `Flow ladder of ${filament.id} on ${machine.id}, nozzle ${nozzle.id}, ${temperature}`,
    date: request.today,
    sections: sectionsOf(pairing, ladder),
    given: [
      { name: 'commandedFlow', unit: 'mm3/s' },
      { name: 'feedLength', unit: 'mm' },
    ],
    read: [{ name: 'extrudedMass', unit: 'g' }],
    hints: ['feed mm/s', 'feed mm/min', 'piece s', 'full mass g'],
    rows: rowsOf(ladder),
    repeats: ladder.repeats,
    cautions: planCautions(ladder.setup.families),
    trial: {
      id: freeTrialId(registry, [machine.id, filament.id, temperature.replace(/ .*/, '')]),
      lines: draftLines(pairing, ladder, temperature),
      afterwards: [
        'If the machine stopped or the drive ground the strand, take the # away and write the flow at which it did:',
        'events:',
        `  - {event: halted, commandedFlow: ${shown(lateFlow(ladder), 'volumeFlow')}, note: What stopped it}`,
      ],
    },
    facts: ladderFacts(pairing, ladder),
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
    { heading: 'Expected limit', items: predictionItems(ladder.prediction) },
    { heading: 'What speaks for it', items: reasonItems(ladder.prediction) },
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

function ladderItems({ steps, repeats, piece, resolution, prediction, highest }: LadderPlan): string[] {
  const { size, flows } = steps;
  const last = flows.at(-1) ?? 0;
  const end =
    last >= prediction.range.high
      ? 'beyond the expected range, so that the onset is crossed'
      : `where heater and drive end (${shownNumber(Number(highest.toPrecision(3)))} mm3/s); if the onset is not crossed by then, the limit is a lower bound`;
  return [
    `${flows.length} flows from ${shown(flows[0] ?? 0, 'volumeFlow')} to ${shown(last, 'volumeFlow')} in steps of ${shown(size, 'volumeFlow')}, rising, ${repeats} pieces each; the end lies ${end}`,
    `feed ${shown(piece.length, 'length')} of strand a piece into free air, fans off; at full delivery it weighs ${shown(Number(piece.mass.toPrecision(4)), 'mass')}, of which the step of the scale, ${shown(resolution, 'mass')}, is ${shownNumber(Number((100 * piece.scaleShare).toPrecision(2)))} %`,
    'purge a little at the flow of the step before each piece; cut, let it cool, weigh, write it down',
    'stop when two flows in a row lack more than a quarter of the mass, or when the drive begins to click or grind; delete the rows of the sheet that were not run',
    'where the mass falls by more than a few per cent from one flow to the next, add flows in between',
  ];
}

function temperatureItems({ setup, window, temperatureReason, series }: LadderPlan): string[] {
  const others = series.filter((temperature) => temperature !== setup.nozzleTemperature);
  return [
    `${shown(setup.nozzleTemperature, 'temperature')}: ${temperatureReason}; soak until it has stood still for some minutes`,
    `allowed here ${shownRange(window, 'temperature')}`,
    ...window.bounds.map(({ text }) => text),
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

function draftLines(
  { machine, nozzle, filament }: FittedPairing,
  ladder: LadderPlan,
  temperature: string,
): string[] {
  return [
    '# operator: Who runs it',
    `machine: ${machine.id}`,
    `nozzle: ${nozzle.id}`,
    `filament: ${filament.id}`,
    '# batch: As printed on the spool',
    ...(machine.data.firmware === undefined ? [] : [`firmware: ${machine.data.firmware}`]),
    'conditions:',
    `  nozzleTemperature: ${temperature}`,
    '  # ambientTemperature: 22 Cel',
    '  # relativeHumidity: 45 %',
    `acceptedDeficit: ${shown(usualAcceptedDeficit, 'ratio')}`,
    `scale: {resolution: ${shown(ladder.resolution, 'mass')}}`,
  ];
}
