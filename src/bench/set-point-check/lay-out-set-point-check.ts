import { conditionsOf, type FittedPairing } from '../../knowledge/pairing.ts';
import { type CheckedPart, checkedParts } from '../../knowledge/part-offset.ts';
import { chooseStatement } from '../../registry/statement.ts';
import { type Result, refusal, success } from '../../result.ts';
import { quote } from '../../text/quote.ts';
import { wordHint } from '../../text/unknown-word.ts';
import { shown } from '../../units/wording.ts';
import type { LayoutRequest } from '../layout/layout-request.ts';
import type { PlanProblem } from '../layout/plan-problem.ts';
import type { RunLayout } from '../layout/run-layout.ts';
import { settingsSections } from '../layout/settings-sections.ts';

/** Lowest set temperature of each part, °C, and the highest where none is known (common practice, no source). */
const usualReach = {
  nozzle: [190, 250],
  bed: [50, 90],
  chamber: [35, 60],
  dryer: [45, 65],
} as const satisfies Readonly<Record<CheckedPart, readonly [number, number]>>;

/** Minutes after which each set temperature is read. */
const times = [2, 5, 10, 14, 18, 22];
const gaps = 2;

const places = {
  nozzle: 'with a thin thermocouple in the bore, or in the melt that just comes out, not on the outside',
  bed: 'with a thermocouple under tape in the middle of the bed, with a cover of cardboard',
  chamber: 'in still air beside the build plate, out of the way of fans and radiation',
  dryer: 'in the air between the windings of a spool, with the lid closed',
} as const satisfies Readonly<Record<CheckedPart, string>>;

/** A part of the machine at three set temperatures, read while it warms up and after. */
export function layOutSetPointCheck({
  pairing,
  subject = 'nozzle',
}: LayoutRequest): Result<RunLayout, PlanProblem> {
  const part = checkedParts.find((each) => each === subject);
  if (part === undefined) return unknownPart(subject);
  const limit = limitOf(part, pairing);
  const [lowest, usualHighest] = usualReach[part];
  const highest = limit === null ? usualHighest : Math.min(usualHighest, limit);
  const low = Math.min(lowest, highest - 20);
  const sets = Array.from({ length: gaps + 1 }, (_, index) =>
    Math.round(low + ((highest - low) * index) / gaps),
  );
  return success({
    name: `Set temperatures of the ${part}`,
    idWord: `${part}-temperature`,
    conditions: ['ambientTemperature: 22 Cel # what the room has'],
    keys: ['thermometer: {resolution: 0.1 K, accuracy: 2 K}', `checkedPart: ${part}`],
    sections: settingsSections({
      settings: [
        limit === null
          ? `no limit of the ${part} is known; the usual temperatures are planned`
          : `limit of the ${part} ${shown(limit, 'temperature')}; no set temperature is above it`,
        'fans and heaters of other parts as in a print',
      ],
      howTo: [
        `put the thermometer ${places[part]}`,
        'set the lowest temperature and start the clock; read at each time, and go on to the next when all are read',
        'compare the thermometer with another in ice water or boiling water, and write down its largest error',
      ],
      atHand: [
        'a thermometer with thermocouple and its accuracy; a clock; heat-proof gloves and eye protection',
      ],
    }),
    given: [
      { name: 'setTemperature', unit: 'Cel' },
      { name: 'elapsedTime', unit: 'min' },
    ],
    read: [{ name: 'referenceTemperature', unit: 'Cel' }],
    rows: sets.flatMap((set) => times.map((time) => ({ given: [set, time], hints: [] }))),
    repeats: 1,
  });
}

function limitOf(part: CheckedPart, pairing: FittedPairing): number | null {
  const { machine, hotEnd } = pairing;
  const { bed, chamber, dryer } = machine.data;
  if (part === 'dryer') return dryer?.temperature ?? dryer?.range?.high ?? null;
  const stated = {
    nozzle: hotEnd.temperatureLimit,
    bed: bed.temperatureLimit,
    chamber: chamber.temperatureLimit,
  };
  return chooseStatement(stated[part], conditionsOf(pairing))?.value ?? null;
}

function unknownPart(name: string) {
  return refusal(
    'unknownSubject',
    `There is no part "${quote(name)}" whose set temperature is checked`,
    wordHint(name, checkedParts),
  );
}
