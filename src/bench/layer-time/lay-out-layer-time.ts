import { conditionsOf } from '../../knowledge/pairing.ts';
import { chooseStatement } from '../../registry/statement.ts';
import { type Result, success } from '../../result.ts';
import { shown } from '../../units/wording.ts';
import { benchKit, dryingAdvice } from '../layout/bench-kit.ts';
import type { LayoutRequest } from '../layout/layout-request.ts';
import { nozzleCondition } from '../layout/nozzle-condition.ts';
import type { PlanProblem } from '../layout/plan-problem.ts';
import type { RunLayout } from '../layout/run-layout.ts';
import { settingsSections } from '../layout/settings-sections.ts';

/** Times as shares of the layer time in use; without one, 8 s are taken (common practice, no source). */
const shares = [0.4, 0.55, 0.7, 0.85, 1, 1.25, 1.6, 2.2, 3];
const usual = 8;

/** A ladder of layer times on a small specimen. */
export function layOutLayerTime({
  pairing,
  nozzleTemperature,
}: LayoutRequest): Result<RunLayout, PlanProblem> {
  const { filament } = pairing;
  const conditions = conditionsOf(pairing);
  const known = chooseStatement(filament.data.shortestLayerTime, conditions);
  const fan = chooseStatement(filament.data.fan, conditions);
  const temperature = nozzleTemperature();
  if (!temperature.ok) return temperature;
  const nozzle = nozzleCondition(temperature.value);
  const times = [...new Set(shares.map((share) => toHalves((known?.value ?? usual) * share)))];
  return success({
    name: 'Layer times',
    idWord: 'layertime',
    conditions: [nozzle.line, ...(fan === null ? [] : [`fan: ${shown(fan.value.high, 'ratio')}`])],
    keys: ['acceptedGrade: 4'],
    sections: settingsSections({
      settings: [
        nozzle.setting,
        known === null
          ? `no shortest layer time is known; the ladder is centred on ${usual} s`
          : `shortest layer time in use ${shown(known.value, 'time')} (${known.basis})`,
        ...(fan === null
          ? []
          : [`fan at ${shown(fan.value.high, 'ratio')}, the upper end of its window (${fan.basis})`]),
      ],
      howTo: [
        'print one small specimen at a time, and set its speed so that a layer takes the time of the row',
        'time a few layers with a stop watch, and write down the real time',
        'grade shape and corners from 1 (useless) to 5 (faultless) without knowing the layer time',
      ],
      atHand: ['a stop watch', dryingAdvice(pairing), ...benchKit],
    }),
    given: [{ name: 'layerTime', unit: 's' }],
    read: [{ name: 'grade', unit: '{count}' }],
    rows: times.map((time) => ({ given: [time], hints: [] })),
    repeats: 2,
  });
}

function toHalves(seconds: number): number {
  return Math.max(0.5, Math.round(seconds * 2) / 2);
}
