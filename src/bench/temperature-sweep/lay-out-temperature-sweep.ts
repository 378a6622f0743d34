import type { FittedPairing } from '../../knowledge/pairing.ts';
import { type Result, refusal, success } from '../../result.ts';
import type { Range } from '../../units/canonical.ts';
import { shownRange } from '../../units/wording.ts';
import { benchKit, dryingAdvice } from '../layout/bench-kit.ts';
import { evenSteps, roundStepSize } from '../layout/even-steps.ts';
import type { AllowedTemperatures, LayoutRequest } from '../layout/layout-request.ts';
import type { PlanProblem } from '../layout/plan-problem.ts';
import type { RunLayout } from '../layout/run-layout.ts';
import { settingsSections } from '../layout/settings-sections.ts';

/** Fewer temperatures show no window; more than this tire whoever grades. */
const fewest = 4;
const most = 8;

/** A sweep of the nozzle temperature over what is allowed. */
export function layOutTemperatureSweep({
  pairing,
  allowedTemperatures,
}: LayoutRequest): Result<RunLayout, PlanProblem> {
  const window = allowedTemperatures();
  if (!window.ok) return window;
  const temperatures = sweep(window.value);
  if (temperatures.length < fewest) return tooNarrow(pairing, window.value);
  return success({
    name: 'Temperature sweep',
    idWord: 'sweep',
    conditions: ['ambientTemperature: 22 Cel # what the room has'],
    keys: ['acceptedGrade: 4'],
    sections: settingsSections({
      settings: [
        `allowed range ${shownRange(window.value, 'temperature')}`,
        ...window.value.bounds.map(({ text }) => text),
        'speed, flow, fan and layer height the same for all specimens',
      ],
      howTo: [
        'print the same specimen twice at each temperature, in a mixed order; wait until the temperature is stable',
        'grade each from 1 (useless) to 5 (faultless) by bond and surface, without knowing its temperature',
        'if bond strength is measured on a testing machine, write bondStrength with its unit instead of grade',
      ],
      atHand: [dryingAdvice(pairing), ...benchKit],
    }),
    given: [{ name: 'nozzleTemperature', unit: 'Cel' }],
    read: [{ name: 'grade', unit: '{count}' }],
    rows: temperatures.map((temperature) => ({ given: [temperature], hints: [] })),
    repeats: 2,
  });
}

/** Even temperatures of 1, 2 or 5 K and their tens over a window. */
function sweep({ low, high }: Range): number[] {
  const size = roundStepSize(Math.max((high - low) / (most - 1), 1), 'up');
  const first = Math.ceil(low / size - 1e-9);
  return evenSteps(size, first, Math.floor(high / size + 1e-9));
}

function tooNarrow({ filament, machine }: FittedPairing, window: AllowedTemperatures) {
  return refusal(
    'tooNarrow',
    `The range of nozzle temperatures for ${filament.id} on ${machine.id}, ${shownRange(window, 'temperature')}, is too narrow for a sweep: ${window.bounds.map(({ text }) => text).join('; ')}`,
    'Run a flow ladder at one of them instead.',
  );
}
