import { compareText } from '../../registry/finding.ts';
import { idsOf } from '../../registry/registry.ts';
import { type Result, refusal, success } from '../../result.ts';
import { shown } from '../../units/wording.ts';
import { benchKit, dryingAdvice } from '../layout/bench-kit.ts';
import type { LayoutRequest } from '../layout/layout-request.ts';
import { nozzleCondition } from '../layout/nozzle-condition.ts';
import type { PlanProblem } from '../layout/plan-problem.ts';
import type { RunLayout } from '../layout/run-layout.ts';
import { settingsSections } from '../layout/settings-sections.ts';

/** A second print shows how far the time repeats, a third how far that is chance. */
const prints = 3;

/** Prints of a job of the registry, timed and weighed. */
export function layOutReferencePrint({
  registry,
  pairing,
  massResolution,
  nozzleTemperature,
}: LayoutRequest): Result<RunLayout, PlanProblem> {
  const jobs = idsOf(registry, 'job').toSorted(compareText);
  const [job] = jobs;
  if (job === undefined) {
    return refusal('noJob', 'The registry holds no job to print', 'Add one under jobs/.');
  }
  const temperature = nozzleTemperature();
  if (!temperature.ok) return temperature;
  const nozzle = nozzleCondition(temperature.value);
  return success({
    name: `Reference prints of the job ${job}`,
    idWord: job,
    job,
    conditions: [nozzle.line],
    keys: [`scale: {resolution: ${shown(massResolution, 'mass')}}`],
    sections: settingsSections({
      settings: [
        nozzle.setting,
        `job ${job}; ${jobs.length === 1 ? 'it is the only one of the registry' : `the registry also holds ${jobs.slice(1).join(', ')}: change the line in the trial to print another`}`,
        'speeds and accelerations from the table of the pairing; note which table',
      ],
      howTo: [
        'time the print from the first move of the part to its last, without warming up',
        'weigh the part without skirt and supports',
        `print it ${prints} times; delete the row of a print that failed`,
      ],
      atHand: ['a clock; a scale that can carry the part', dryingAdvice(pairing), ...benchKit],
    }),
    given: [],
    read: [
      { name: 'printTime', unit: 'min' },
      { name: 'mass', unit: 'g' },
    ],
    hints: ['print'],
    rows: Array.from({ length: prints }, (_, index) => ({ given: [], hints: [String(index + 1)] })),
    repeats: 1,
  });
}
