import { trialLimit } from '../../evidence/trial-limit.ts';
import { trialIndex } from '../../knowledge/trial-index.ts';
import type { Machine, Statement } from '../../registry/generated/documents.ts';
import type { Hit } from '../../registry/hit.ts';
import { stated } from '../../registry/stated.ts';
import type { Range } from '../../units/canonical.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { hotEnd } from '../engine/examples.ts';
import type { ProfileRule, RuleContext } from '../engine/rule.ts';

/** A hotter nozzle, an easier polymer and a careful sheet together give less. */
const factor = 2;
/** In dB: a sound level depends on room, distance and print; a silent mode is not that silent. */
const mostApart = 10;

export const rule: ProfileRule<'machine'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['machine'],
  severity: 'warning',
  statement:
    'A machine does not claim far less flow, speed or acceleration than trials have found, nor a sound level far from theirs.',
  rationale: 'Data sheets do not understate: the claim has lost a digit, or is in cm3/h instead of mm3/s.',
  source: `Trials of the registry on the same nozzle, and values of the profile that were measured; a factor of ${factor} and ${mostApart} dB are common practice, no source.`,
  formula: `Q_trial <= ${factor} Q_claimed, Q_trial the lower end of the flow limit; the same of top speed and acceleration; low - ${mostApart} dB <= L_claimed <= high + ${mostApart} dB`,
  example: {
    kind: 'machine',
    bad: `
topSpeed:
  - {value: 160 mm/s, basis: claimed, source: plumstead-wren-sheet}${hotEnd({ meltFlow: ['32 cm3/h', 'polymer: PLA, nozzleTemperature: 230 Cel'] })}`,
    good: hotEnd({ meltFlow: ['32 mm3/s', 'polymer: PLA, nozzleTemperature: 230 Cel'] }),
  },
  *check(profile, context) {
    yield* belowMeasured(profile.data);
    for (const [index, { meltFlow }] of profile.data.hotEnds.entries()) {
      for (const { path, value, statement } of stated(meltFlow, ['hotEnds', index, 'meltFlow'])) {
        const best = statement.basis === 'claimed' ? bestTrial(profile.id, statement, context) : null;
        if (best === null || best.flow <= factor * value) continue;
        yield {
          path,
          part: 'value',
          message: `${shown(value, 'volumeFlow')} is claimed, but the trial "${best.id}" on the same nozzle gives ${shown(best.flow, 'volumeFlow')} or more`,
          found: shown(value, 'volumeFlow'),
          allowed: `from ${shown(best.flow / factor, 'volumeFlow')}`,
          help: 'Check the claim against the sheet, digits and unit, and the flows of the trial.',
        };
      }
    }
  },
};

const dimensions = { topSpeed: 'speed', acceleration: 'acceleration', soundLevel: 'soundLevel' } as const;

function* belowMeasured(machine: Machine): Generator<Hit> {
  for (const key of ['topSpeed', 'acceleration', 'soundLevel'] as const) {
    const [dimension, measured] = [dimensions[key], measuredRange(machine[key])];
    if (measured === null) continue;
    const sane =
      key === 'soundLevel'
        ? { low: measured.low - mostApart, high: measured.high + mostApart }
        : { low: measured.low / factor, high: Number.POSITIVE_INFINITY };
    for (const { path, value, statement } of stated(machine[key], [key])) {
      if (statement.basis !== 'claimed' || (value >= sane.low && value <= sane.high)) continue;
      const end =
        value < sane.low ? `from ${shown(sane.low, dimension)}` : `up to ${shown(sane.high, dimension)}`;
      yield {
        path,
        part: 'value',
        message: `${shown(value, dimension)} is claimed, but ${shownRange(measured, dimension)} was measured`,
        found: shown(value, dimension),
        allowed: end,
        help: 'Check the claim against the sheet, digits and unit, and the trial against its bench sheet.',
      };
    }
  }
}

/** From the lowest to the highest that measured values leave possible; null where nothing was measured. */
function measuredRange(statements: readonly Statement<number>[] | undefined): Range | null {
  const ranges = (statements ?? []).flatMap(({ basis, value, interval }) =>
    basis === 'measured' ? [interval ?? { low: value, high: value }] : [],
  );
  if (ranges.length === 0) return null;
  return {
    low: Math.min(...ranges.map(({ low }) => low)),
    high: Math.max(...ranges.map(({ high }) => high)),
  };
}

/** The trial with the highest limit on the nozzle of a claim, by the lower end of what its readings leave possible. */
function bestTrial(
  machine: string,
  { at }: Statement<number>,
  context: RuleContext,
): { readonly id: string; readonly flow: number } | null {
  if (at?.nozzle === undefined) return null;
  const trials = trialIndex(context.registry).byMachine.get(machine) ?? [];
  const limits = trials
    .filter(({ data }) => data.nozzle === at.nozzle)
    .map((trial) => ({ id: trial.id, flow: trialLimit(trial, context)?.low ?? 0 }))
    .sort((a, b) => b.flow - a.flow);
  return limits[0] ?? null;
}
