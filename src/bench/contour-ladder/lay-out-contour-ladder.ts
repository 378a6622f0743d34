import { conditionsOf } from '../../knowledge/pairing.ts';
import { lengthToTouchSpeed } from '../../physics/motion.ts';
import { chooseStatement } from '../../registry/statement.ts';
import { type Result, refusal, success } from '../../result.ts';
import { shown } from '../../units/wording.ts';
import { benchKit, dryingAdvice } from '../layout/bench-kit.ts';
import { evenSteps, roundStepSize } from '../layout/even-steps.ts';
import type { LayoutRequest } from '../layout/layout-request.ts';
import { nozzleCondition } from '../layout/nozzle-condition.ts';
import type { PlanProblem } from '../layout/plan-problem.ts';
import type { RunLayout } from '../layout/run-layout.ts';
import { settingsSections } from '../layout/settings-sections.ts';

/** The ladder spans these shares of the contour speed in use, else of half of the top speed (common practice, no source). */
const reach = { low: 0.4, high: 2 };
const shareOfTop = 0.5;
const steps = 9;

/** A ladder of contour speeds at the acceleration of the machine. */
export function layOutContourLadder({
  pairing,
  nozzleTemperature,
}: LayoutRequest): Result<RunLayout, PlanProblem> {
  const { machine, filament } = pairing;
  const conditions = conditionsOf(pairing);
  const top = chooseStatement(machine.data.topSpeed, conditions);
  const acceleration = chooseStatement(machine.data.acceleration, conditions);
  const temperature = nozzleTemperature();
  if (!temperature.ok) return temperature;
  if (top === null || acceleration === null) {
    return refusal(
      'nothingKnown',
      `Top speed and acceleration of ${machine.id} are not both known for this pairing`,
      `State them in machines/${machine.id}.yaml.`,
    );
  }
  const nozzle = nozzleCondition(temperature.value);
  const usual =
    chooseStatement(filament.data.contourSpeed, conditions) ??
    chooseStatement(machine.data.contourSpeed, conditions);
  const speeds = ladder(usual?.value ?? top.value * shareOfTop, top.value);
  return success({
    name: 'Contour ladder',
    idWord: 'contour',
    conditions: [nozzle.line, `acceleration: ${shown(acceleration.value, 'acceleration')}`],
    keys: ['acceptedGrade: 4'],
    sections: settingsSections({
      settings: [
        nozzle.setting,
        usual === null
          ? `no contour speed is known; the ladder goes up to the top speed of ${shown(top.value, 'speed')}`
          : `contour speed in use ${shown(usual.value, 'speed')} (${usual.basis}), top speed ${shown(top.value, 'speed')} (${top.basis})`,
        `acceleration ${shown(acceleration.value, 'acceleration')} (${acceleration.basis}) for all specimens`,
        'the column "side" is the shortest straight side, from stop to stop, on which the speed is reached: make the specimen longer',
      ],
      howTo: [
        'print a single-wall specimen with sharp corners at each speed, at a flow well within the limit of the hot end',
        'grade the wall behind the corners from 1 (useless) to 5 (faultless) in light from the side, without knowing the speed',
        'if ripples are measured, write rippleAmplitude in mm instead of grade, and acceptedRipple instead of acceptedGrade',
      ],
      atHand: [dryingAdvice(pairing), 'a lamp that shines along the wall', ...benchKit],
    }),
    given: [{ name: 'contourSpeed', unit: 'mm/s' }],
    read: [{ name: 'grade', unit: '{count}' }],
    hints: ['speed mm/min', 'side mm'],
    rows: speeds.map((speed) => ({
      given: [speed],
      hints: [(speed * 60).toFixed(0), lengthToTouchSpeed(speed, acceleration.value).toFixed(1)],
    })),
    repeats: 2,
  });
}

function ladder(usual: number, top: number): number[] {
  const high = Math.min(usual * reach.high, top);
  const low = Math.min(usual * reach.low, high * reach.low);
  const size = roundStepSize((high - low) / steps, 'up');
  const first = Math.max(1, Math.floor(low / size));
  const last = Math.max(first + 4, Math.floor(high / size + 1e-9));
  return evenSteps(size, first, last);
}
