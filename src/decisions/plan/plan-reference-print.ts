import { usualMassResolution } from '../../bench/facts/instrument-facts.ts';
import type { FittedPairing } from '../../knowledge/pairing.ts';
import { compareText } from '../../registry/finding.ts';
import { idsOf, type Registry } from '../../registry/registry.ts';
import { failure, type Result, success } from '../../result.ts';
import { shown } from '../../units/wording.ts';
import type { BenchPlan } from './bench-plan.ts';
import { dryingAdvice } from './drying-advice.ts';
import { benchKit } from './plan-cautions.ts';
import type { PlanRequest } from './plan-request.ts';
import { planSheet } from './plan-sheet.ts';
import { plannedCondition } from './planned-condition.ts';

/** A second print shows how far the time repeats, a third how far that is chance. */
const prints = 3;

/** Prints of a job of the registry, timed and weighed. */
export function planReferencePrint(
  registry: Registry,
  pairing: FittedPairing,
  request: PlanRequest,
): Result<BenchPlan, string> {
  const jobs = idsOf(registry, 'job').toSorted(compareText);
  const [job] = jobs;
  if (job === undefined) return failure('The registry holds no job to print; add one under jobs/.');
  const temperature = plannedCondition(registry, pairing, request);
  if (!temperature.ok) return temperature;
  return success(
    planSheet(registry, pairing, request, {
      method: 'referencePrint',
      name: `Reference prints of the job ${job}`,
      idWord: job,
      names: 'nozzle',
      job,
      conditions: [temperature.value.line],
      keys: [`scale: {resolution: ${shown(request.resolution ?? usualMassResolution, 'mass')}}`],
      settings: [
        temperature.value.setting,
        `job ${job}; ${jobs.length === 1 ? 'it is the only one of the registry' : `the registry also holds ${jobs.slice(1).join(', ')}: change the line of the trial to print another`}`,
        'speeds and accelerations by the table of the pairing; note which',
      ],
      howTo: [
        'take the time from the first move of the part to its last, warming up left out',
        'weigh the part without skirt and supports',
        `print it ${prints} times; delete the row of a print that failed`,
      ],
      atHand: ['a clock; a scale that bears the part', dryingAdvice(pairing), ...benchKit],
      given: [],
      read: [
        { name: 'printTime', unit: 'min' },
        { name: 'mass', unit: 'g' },
      ],
      hints: ['print'],
      rows: Array.from({ length: prints }, (_, index) => ({ given: [], hints: [String(index + 1)] })),
      repeats: 1,
    }),
  );
}
