import { conditionsOf, type FittedPairing } from '../../knowledge/pairing.ts';
import { chooseStatement } from '../../registry/statement.ts';
import { type Result, refusal, success } from '../../result.ts';
import { quote } from '../../text/quote.ts';
import { wordHint } from '../../text/unknown-word.ts';
import { wordsOf } from '../../text/words.ts';
import { fromCanonical } from '../../units/convert-unit.ts';
import { dimensionInfo } from '../../units/dimension.ts';
import { clean } from '../../units/round-to-step.ts';
import { requireUnit } from '../../units/unit-table.ts';
import { shown } from '../../units/wording.ts';
import { benchKit, dryingAdvice } from '../layout/bench-kit.ts';
import type { LayoutRequest } from '../layout/layout-request.ts';
import { nozzleCondition } from '../layout/nozzle-condition.ts';
import type { PlanProblem } from '../layout/plan-problem.ts';
import type { RunLayout } from '../layout/run-layout.ts';
import { settingsSections } from '../layout/settings-sections.ts';
import { type LadderSettingName, ladderSettingNames, ladderSettings } from './ladder-settings.ts';

/** Settings from the first to the last, in the canonical unit, where none is in use (common practice, no source). */
const usualReach = {
  retractionLength: [0, 2.4],
  retractionSpeed: [10, 90],
  pressureCompensation: [0, 0.08],
  stickingSpeed: [20, 180],
  bridgeSpeed: [10, 90],
  overhangSpeed: [15, 135],
  fan: [0, 1],
} as const satisfies Readonly<Record<LadderSettingName, readonly [number, number]>>;

/** What is looked at on the specimens. */
const flaws = {
  retractionLength: 'strings between two towers',
  retractionSpeed: 'strings between two towers, and gaps after a travel move',
  pressureCompensation: 'bulges at corners, and gaps before them',
  stickingSpeed: 'lines of the first layer that do not stick to the bed',
  bridgeSpeed: 'sag of a bridge',
  overhangSpeed: 'curl and droop of an overhang',
  fan: 'sag of overhangs, and cracks between layers',
} as const satisfies Readonly<Record<LadderSettingName, string>>;

const intervals = 8;
/** How far a ladder reaches beyond the setting in use. */
const beyond = 2;

/** One setting from where it surely fails to where it surely holds, or the other way round. */
export function layOutSettingLadder({
  pairing,
  subject = 'retractionLength',
  nozzleTemperature,
}: LayoutRequest): Result<RunLayout, PlanProblem> {
  const name = ladderSettingNames.find((each) => each === subject);
  if (name === undefined) return unknownSetting(subject);
  const temperature = nozzleTemperature();
  if (!temperature.ok) return temperature;
  const nozzle = nozzleCondition(temperature.value);
  const { dimension } = ladderSettings[name];
  const unit = dimension === 'ratio' ? '%' : (dimensionInfo[dimension].canonicalUnit ?? '');
  const { low, high, why } = reachOf(name, pairing);
  const rows = Array.from({ length: intervals + 1 }, (_, index) => low + ((high - low) * index) / intervals);
  const inUnit = (value: number) =>
    clean(Number(fromCanonical(value, requireUnit(unit, dimension)).toPrecision(3)));
  return success({
    name: `Ladder of the ${wordsOf(name)}`,
    idWord: wordsOf(name).replaceAll(' ', '-'),
    conditions: [nozzle.line],
    keys: ['acceptedGrade: 4'],
    sections: settingsSections({
      settings: [nozzle.setting, why, 'all other settings as in use, and the same for all specimens'],
      howTo: [
        `print one specimen at each setting and look at ${flaws[name]}`,
        'print the specimens in another order than that of the settings, so that warming up does not pass for the setting',
        'grade from 1 (useless) to 5 (faultless) without knowing the setting',
        'if the defect is measured, write defectSize in mm instead of grade, and acceptedDefect instead of acceptedGrade',
      ],
      atHand: [dryingAdvice(pairing), ...benchKit],
    }),
    given: [{ name, unit }],
    read: [{ name: 'grade', unit: '{count}' }],
    rows: rows.map((value) => ({ given: [inUnit(value)], hints: [] })),
    repeats: 2,
  });
}

/** From where to where: up to twice the setting in use; without one the usual ones. */
function reachOf(name: LadderSettingName, pairing: FittedPairing) {
  const [low, high] = usualReach[name];
  const { dimension } = ladderSettings[name];
  const known = name === 'fan' ? null : chooseStatement(pairing.filament.data[name], conditionsOf(pairing));
  if (known === null) {
    return { low, high, why: `no ${wordsOf(name)} is known; the ladder has the usual ones` };
  }
  const top = beyond * known.value;
  const why = `${wordsOf(name)} in use ${shown(known.value, dimension)} (${known.basis}); the ladder goes up to twice that`;
  return { low: (low / high) * top, high: top, why };
}

function unknownSetting(name: string) {
  return refusal(
    'unknownSubject',
    `There is no setting "${quote(name)}" that a ladder raises`,
    wordHint(name, ladderSettingNames),
  );
}
