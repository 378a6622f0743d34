import { type StatedPauses, secondsOfPauses, statedPauses } from '../../bench/reference-print/job-pauses.ts';
import { type JobFeature, jobPlan } from '../../bench/reference-print/job-plan.ts';
import { isPrinted } from '../../knowledge/feature.ts';
import { isSimulated } from '../../knowledge/origin.ts';
import { conditionsOf, type Pairing } from '../../knowledge/pairing.ts';
import { quirksOf } from '../../knowledge/quirks.ts';
import { type PrintTime, printTime, secondsOf } from '../../physics/print-time.ts';
import type { Job, Statement } from '../../registry/generated/documents.ts';
import type { Registry } from '../../registry/registry.ts';
import { chooseStatement } from '../../registry/statement.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import type { MillimetresPerSecond, Seconds } from '../../units/canonical.ts';
import type { FeatureTime, JobEstimate, ModelCheck } from './job-estimate.ts';
import { beadWarnings, jobFilament } from './job-filament.ts';
import { type JobSpeed, jobSpeeds, type SpeedsProblem } from './job-speeds.ts';
import { knownValue } from './known-value.ts';
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
  const { mass, cost } = jobFilament(registry, pairing, job);
  const topSpeed = chooseStatement(machine.data.topSpeed, conditions);
  const soundLevel = chooseStatement(machine.data.soundLevel, conditions);
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
    topSpeed: knownValue(topSpeed, registry),
    mass,
    filamentCost: cost,
    soundLevel: knownValue(soundLevel, registry),
    price: knownValue(chooseStatement(machine.data.price, conditions), registry),
    weakest: weakestNumber(registry, time, speeds, stated),
    modelCheck,
    warnings: [...beadWarnings(pairing, job), ...unknownPauses(stated, time)],
    quirks: quirksOf(registry, pairing),
    trials: [
      ...[...speeds.values()].flatMap(({ trials }) => trials),
      ...[topSpeed, soundLevel, ...Object.values(stated)].flatMap((statement) => statement?.evidence ?? []),
      ...(modelCheck?.trials ?? []),
    ],
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
        isSimulated: speed.weakest.isSimulated,
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

function weakestNumber(
  registry: Registry,
  time: PrintTime<JobFeature>,
  speeds: Speeds,
  stated: StatedPauses,
): NamedBasis {
  const { layerChange, travel, shortestLayerTime } = stated;
  const ofSpeeds = [...speeds.values()].map(({ weakest }) => weakest);
  const named = (of: string, statement: Statement<Seconds> | null, used: boolean): NamedBasis[] =>
    statement === null || !used
      ? []
      : [{ basis: statement.basis, of, isSimulated: isSimulated(statement, registry) }];
  return weakestOf({ basis: 'measured', of: 'every number', isSimulated: false }, [
    ...ofSpeeds,
    ...named('layerChangeTime', layerChange, time.layerChanges > 0),
    ...named('travelPause', travel, (time.paths.get('travel')?.pauses ?? 0) > 0),
    ...named('shortestLayerTime', shortestLayerTime, time.coolingWait > 0),
  ]);
}
