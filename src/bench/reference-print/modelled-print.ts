import { printTime } from '../../physics/print-time.ts';
import type { Trial } from '../../registry/generated/documents.ts';
import type { Registry } from '../../registry/registry.ts';
import type { Seconds } from '../../units/canonical.ts';
import { secondsOfPauses, statedPauses } from './job-pauses.ts';
import { type JobFeature, type JobPaths, jobPlan, type PathSettings } from './job-plan.ts';

/**
 * Time, in s, that the time model gives for a job, that of the reference print unless given, with the settings that the trial
 * states. Null for another method, or where job, machine, filament or the settings of one of the job's paths are not
 * known, or where one of its figures is 0 or negative.
 */
export function modelledPrintTime(
  registry: Registry,
  trial: Trial,
  job: JobPaths | undefined = registry.job.get(trial.job ?? '')?.data,
): Seconds | null {
  if (trial.method !== 'referencePrint' || trial.settings === undefined) return null;
  const machine = registry.machine.get(trial.machine ?? '')?.data;
  const filament = registry.filament.get(trial.filament)?.data;
  if (job === undefined || machine === undefined || filament === undefined) return null;
  const settings = new Map<JobFeature, PathSettings>();
  // The schema knows no other keys.
  for (const feature of Object.keys(job.features) as JobFeature[]) {
    const given = trial.settings[feature];
    if (given === undefined || given.speed <= 0 || given.acceleration <= 0) return null;
    settings.set(feature, given);
  }
  const pauses = statedPauses(machine, filament, {
    machine: machine.id,
    filament: filament.id,
    polymer: filament.polymer,
    ...(trial.nozzle !== undefined && { nozzle: trial.nozzle }),
  });
  const { total } = printTime(jobPlan(job, settings, secondsOfPauses(pauses)));
  return total > 0 && Number.isFinite(total) ? total : null;
}
