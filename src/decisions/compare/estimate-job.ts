import { type StatedPauses, secondsOfPauses, statedPauses } from '../../bench/reference-print/job-pauses.ts';
import { type JobFeature, jobPlan } from '../../bench/reference-print/job-plan.ts';
import { isPrinted } from '../../knowledge/feature.ts';
import { conditionsOf, type Pairing } from '../../knowledge/pairing.ts';
import { type PrintTime, printTime, secondsOf } from '../../physics/print-time.ts';
import type { Job, Statement } from '../../registry/generated/documents.ts';
import type { Registry } from '../../registry/registry.ts';
import { chooseStatement } from '../../registry/statement.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import type { MillimetresPerSecond, Seconds } from '../../units/canonical.ts';
import type { FeatureTime, JobEstimate, Known, ModelCheck } from './job-estimate.ts';
import { beadWarnings, jobFilament } from './job-filament.ts';
import { type JobSpeed, jobSpeeds, type SpeedsProblem } from './job-speeds.ts';
import { limitersOfPrint, longestFirst, mainLimiter } from './time-limiters.ts';
import { type NamedBasis, weakestOf } from './weakest-number.ts';

type Speeds = ReadonlyMap<JobFeature, JobSpeed>;

/** Why there is no estimate: a number that the model needs is not known or not usable. */
export type EstimateProblem = SpeedsProblem | Problem<'noTime'>;

/**
 * Time of a job on a pairing by the time model, what limits it, and what else a choice of machine turns on. All numbers in
 * canonical units.
 */
export function estimateJob(
  registry: Registry,
  pairing: Pairing,
  job: Job,
  modelCheck: ModelCheck | null,
): Result<JobEstimate, EstimateProblem> {
  const found = jobSpeeds(registry, pairing, job);
  if (!found.ok) return found;
  const speeds = found.value;
  const { machine, nozzle, filament } = pairing;
  const conditions = conditionsOf(pairing);
  const stated = statedPauses(machine.data, filament.data, conditions);
  const time = printTime(jobPlan(job, speeds, secondsOfPauses(stated)));
  if (!(time.total > 0 && Number.isFinite(time.total))) {
    return refusal(
      'noTime',
      `No time follows for the job ${job.id}`,
      'Look for a path, segment or corner that is 0 or negative in its profile.',
    );
  }
  const { mass, cost } = jobFilament(pairing, job);
  return success({
    machine: machine.id,
    nozzle: nozzle.id,
    filament: filament.id,
    time: time.total,
    features: featureTimes(time, speeds),
    betweenLayers: time.layerChanges + time.coolingWait,
    limiters: longestFirst(limitersOfPrint(time, speeds)),
    printPeak: highestPeak(time, isPrinted),
    travelPeak: highestPeak(time, (feature) => !isPrinted(feature)),
    topSpeed: known(chooseStatement(machine.data.topSpeed, conditions)),
    mass,
    filamentCost: cost,
    soundLevel: known(chooseStatement(machine.data.soundLevel, conditions)),
    price: known(chooseStatement(machine.data.price, conditions)),
    weakest: weakestNumber(time, speeds, stated),
    modelCheck,
    warnings: [...beadWarnings(pairing, job), ...unknownPauses(stated, time)],
  });
}

function unknownPauses(stated: StatedPauses, time: PrintTime<JobFeature>): string[] {
  const unknown = [
    ...(stated.layerChange === null ? ['the change of layer'] : []),
    ...(stated.travel === null && time.paths.has('travel') ? ['the pause on a travel move'] : []),
    ...(stated.shortestLayerTime === null ? ['the shortest layer time'] : []),
  ];
  return unknown.length === 0 ? [] : [`Not known and not counted: ${unknown.join(', ')}.`];
}

function featureTimes(time: PrintTime<JobFeature>, speeds: Speeds): FeatureTime[] {
  return [...time.paths].flatMap(([feature, path]) => {
    const speed = speeds.get(feature);
    if (speed === undefined) return [];
    return [
      {
        feature,
        time: secondsOf(path),
        limiter: mainLimiter(path, speed),
        commandedSpeed: speed.speed,
        peakSpeed: path.peak,
        basis: speed.weakest.basis,
      },
    ];
  });
}

function highestPeak(
  time: PrintTime<JobFeature>,
  wanted: (feature: JobFeature) => boolean,
): MillimetresPerSecond | null {
  const peaks = [...time.paths].filter(([feature]) => wanted(feature)).map(([, { peak }]) => peak);
  return peaks.length === 0 ? null : Math.max(...peaks);
}

function weakestNumber(time: PrintTime<JobFeature>, speeds: Speeds, stated: StatedPauses): NamedBasis {
  const { layerChange, travel, shortestLayerTime } = stated;
  const ofSpeeds = [...speeds.values()].map(({ weakest }) => weakest);
  const named = (of: string, statement: Statement<Seconds> | null, used: boolean): NamedBasis[] =>
    statement === null || !used ? [] : [{ basis: statement.basis, of }];
  return weakestOf({ basis: 'measured', of: 'every number' }, [
    ...ofSpeeds,
    ...named('layerChangeTime', layerChange, time.layerChanges > 0),
    ...named('travelPause', travel, (time.paths.get('travel')?.pauses ?? 0) > 0),
    ...named('shortestLayerTime', shortestLayerTime, time.coolingWait > 0),
  ]);
}

function known<Value>(statement: Statement<Value> | null): Known<Value> | null {
  return statement === null ? null : { value: statement.value, basis: statement.basis };
}
