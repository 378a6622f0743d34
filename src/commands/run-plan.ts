import { existsSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import type { BenchPlan } from '../decisions/plan/bench-plan.ts';
import { formatPlanAsCsv, formatPlanAsTrial } from '../decisions/plan/plan-as-trial.ts';
import type { PlanRequest } from '../decisions/plan/plan-request.ts';
import { planTrial } from '../decisions/plan/plan-trial.ts';
import { tidyFolders } from '../host/writing/leftovers.ts';
import { writeFiles } from '../host/writing/write-files.ts';
import { type Problem, type Result, success } from '../result.ts';
import { pathLines } from '../text/terminal-text.ts';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';
import { measureOption } from './measure-option.ts';
import { openRegistry, type RegistryOptions } from './open-registry.ts';
import { type AfterOptions, misplacedOption, runAfter } from './plan-after.ts';
import { planForms, planSheet } from './plan-forms.ts';
import type { PlanFormat } from './shared-options.ts';
import { usage } from './usage.ts';

export interface PlanOptions extends RegistryOptions, AfterOptions {
  readonly nozzle?: string;
  readonly method: string;
  readonly setting?: string;
  readonly part?: string;
  readonly temperature?: string;
  readonly resolution?: string;
  readonly format: PlanFormat;
  readonly out?: string;
  readonly today?: string;
}

export async function runPlan(
  machine: string,
  filament: string,
  options: PlanOptions,
  cli: CliContext,
  exit: Exit,
): Promise<void> {
  const today = options.today ?? cli.today();
  const request = requestFrom({ machine, filament, today }, options);
  if (!request.ok) return exit.cannotRun(request.error);
  const misplaced = misplacedOption(options);
  if (misplaced !== null) return exit.cannotRun(misplaced.error);
  if (options.after !== undefined) return runAfter(options.after, request.value, options, cli, exit);
  const opened = await openRegistry(cli, options);
  if (!opened.ok) return exit.cannotRun(opened.error);
  const { registry, trust } = opened.value;
  const planned = planTrial(registry, request.value);
  if (!planned.ok) return exit.cannotRun(planned.error);
  const trusted = trust(today);
  if (!trusted.ok) return exit.cannotRun(trusted.error);
  if (options.out === undefined) return cli.out(planForms[options.format](planned.value, cli));
  const folder = resolve(cli.cwd, options.out);
  const files = filesOf(planned.value);
  const there = files.map(([name]) => name).filter((name) => existsSync(join(folder, name)));
  // They may hold readings already.
  if (there.length > 0) {
    tidyFolders([folder, dirname(folder)]);
    return exit.cannotRun({
      message: `${options.out} already holds ${there.join(', ')}, and nothing is written over`,
      help: 'Move the files away, or name another folder.',
    });
  }
  const written = await writeFiles(files, folder, options.out, cli.cwd);
  if (!written.ok) return exit.cannotRun(written.error);
  const { out } = options;
  cli.out(pathLines(written.value.map((path) => join(out, path))));
}

function requestFrom(
  start: Pick<PlanRequest, 'machine' | 'filament' | 'today'>,
  { nozzle, method, setting, part, temperature, resolution }: PlanOptions,
): Result<PlanRequest, Problem> {
  const nozzleTemperature = measureOption('--temperature', temperature, 'temperature');
  if (!nozzleTemperature.ok) return nozzleTemperature;
  const step = measureOption('--resolution', resolution, 'mass');
  if (!step.ok) return step;
  if (step.value !== undefined && step.value <= 0) {
    return usage(
      '--resolution: a scale steps by more than 0 g',
      'Write the smallest step, such as "0.01 g".',
    );
  }
  return success({
    ...start,
    ...(nozzle !== undefined && { nozzle }),
    method,
    ...(setting !== undefined && { subject: setting }),
    ...(part !== undefined && { subject: part }),
    ...(nozzleTemperature.value !== undefined && { nozzleTemperature: nozzleTemperature.value }),
    ...(step.value !== undefined && { resolution: step.value }),
  });
}

function filesOf(bench: BenchPlan): (readonly [string, string])[] {
  const { id } = bench.trial;
  return [
    [`${id}.yaml`, formatPlanAsTrial(bench, { in: 'file', name: `${id}.csv` })],
    [`${id}.csv`, formatPlanAsCsv(bench)],
    [`${id}.md`, planSheet(bench)],
  ];
}
