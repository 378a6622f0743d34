import { conditionsOf } from '../../knowledge/pairing.ts';
import { softeningOf } from '../../knowledge/softening.ts';
import type { Machine } from '../../registry/generated/documents.ts';
import { chooseStatement } from '../../registry/statement.ts';
import { type Result, refusal, success } from '../../result.ts';
import { shown, shownNumber } from '../../units/wording.ts';
import type { LayoutRequest } from '../layout/layout-request.ts';
import type { PlanProblem } from '../layout/plan-problem.ts';
import type { RunLayout } from '../layout/run-layout.ts';
import { settingsSections } from '../layout/settings-sections.ts';

const hour = 3600;
/** Times as shares of the drying time in use, from the first weighing on (common practice, no source). */
const shares = [0, 0.1, 0.2, 0.35, 0.5, 0.75, 1, 1.4, 2];
const usualTime = 6 * hour;
/** What a dryer is kept below the softening of a filament, in K (common practice, no source). */
const distance = 5;

/** Masses of a spool over its time in a dryer. */
export function layOutDryingCurve({
  pairing,
  families,
  massResolution,
}: LayoutRequest): Result<RunLayout, PlanProblem> {
  const { machine, filament } = pairing;
  const conditions = conditionsOf(pairing);
  const wanted = chooseStatement(filament.data.dryingTemperature, conditions);
  const time = chooseStatement(filament.data.dryingTime, conditions);
  const softening = softeningOf(filament.data, families);
  const highest = softening === null ? null : softening.value - distance;
  const temperature = wanted?.value ?? highest;
  if (temperature === null) return nothingKnown(filament.id);
  if (highest !== null && softening !== null && temperature > highest + distance) {
    return refusal(
      'softensInDryer',
      `${filament.id} has a drying temperature of ${shown(temperature, 'temperature')}, but softens at ${softening.text}`,
      'Correct its profile first.',
    );
  }
  const total = time?.value ?? usualTime;
  return success({
    name: 'Drying curve',
    idWord: 'drying',
    conditions: [`dryingTemperature: ${shown(temperature, 'temperature')}`],
    keys: [
      'residualMoisture: 0.05 % # what is acceptable',
      '# reelMass: 180 g',
      `scale: {resolution: ${shown(massResolution, 'mass')}}`,
    ],
    sections: settingsSections({
      settings: [
        wanted === null
          ? `no drying temperature is stated; ${shown(temperature, 'temperature')} stays ${distance} K below softening`
          : `drying temperature ${shown(temperature, 'temperature')} (${wanted.basis})`,
        ...(softening === null ? [] : [`never above ${softening.text}`]),
        `drying time in use ${shownNumber(total / hour)} h${time === null ? ' (assumed)' : ` (${time.basis})`}; the sheet goes on to twice that time`,
        dryerText(machine.id, machine.data.dryer, temperature),
      ],
      howTo: [
        'weigh the spool when it goes in and then at each time: take it out, weigh it, and put it back within a minute',
        'write down the real time; a mass that no longer changes shows that the spool is dry',
        'weigh an empty reel of the same kind, so that the moisture is a share of the filament alone',
      ],
      atHand: ['a scale that can carry the spool; a clock; gloves for the warm spool'],
    }),
    given: [{ name: 'elapsedTime', unit: 'h' }],
    read: [{ name: 'mass', unit: 'g' }],
    rows: shares.map((share) => ({ given: [Math.round((total * share * 20) / hour) / 20], hints: [] })),
    repeats: 1,
  });
}

function dryerText(id: string, dryer: Machine['dryer'], temperature: number): string {
  if (dryer === undefined) return `no dryer of ${id} is known: use another`;
  const low = dryer.temperature ?? dryer.range?.low;
  const high = dryer.temperature ?? dryer.range?.high;
  const serves = low !== undefined && high !== undefined && temperature >= low && temperature <= high;
  return serves ? `the dryer of ${id} reaches it` : `the dryer of ${id} does not reach it: use another`;
}

function nothingKnown(filament: string) {
  return refusal(
    'nothingKnown',
    `Neither drying temperature nor softening of ${filament} is known`,
    `State dryingTemperature in filaments/${filament}.yaml.`,
  );
}
