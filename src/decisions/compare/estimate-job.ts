import { secondsOfPauses } from '../../bench/reference-print/job-pauses.ts';
import { type JobFeature, type JobPaths, jobPlan } from '../../bench/reference-print/job-plan.ts';
import { features, isPrinted } from '../../knowledge/feature.ts';
import { type PrintTime, printTime, secondsOf } from '../../physics/print-time.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import type { Fraction, MillimetresPerSecond, Range, Seconds } from '../../units/canonical.ts';
import type { FeatureTime, JobEstimate, Known } from './job-estimate.ts';
import { beadWarnings, jobFilament } from './job-filament.ts';
import { type JobSpeed, jobSpeeds, type MeltShare, type SpeedsProblem } from './job-speeds.ts';
import type { PairingFigures } from './pairing-figures.ts';
import { limitersOfPrint, longestFirst, mainLimiter } from './time-limiters.ts';
import { type NamedBasis, weakestOf } from './weakest-number.ts';

type Speeds = ReadonlyMap<JobFeature, JobSpeed>;

/** Why there is no estimate: a number that the model needs is not usable. */
export type EstimateProblem = SpeedsProblem | Problem<'noTime'>;

/** Shares of the melt flow limits of which an estimate says the time, besides the one that is used. */
const lesserShares: readonly Fraction[] = [0.75, 0.5, 0.25];

/**
 * Time of a job on a pairing by the time model, what limits it, and what else a choice of machine turns on. All numbers in
 * canonical units. `meltShare` is the share that is used of what the policy lets melt.
 */
export function estimateJob(
  figures: PairingFigures,
  job: JobPaths & { readonly id: string },
  meltShare: Fraction = 1,
): Result<JobEstimate, EstimateProblem> {
  const found = jobSpeeds(figures, job, () => meltShare);
  if (!found.ok) return found;
  const speeds = found.value;
  const { machine, nozzle, filament, pauses, topSpeed, soundLevel, price, modelCheck, quirks } = figures;
  const time = printTime(jobPlan(job, speeds, secondsOfPauses(pauses)));
  if (!(time.total > 0 && Number.isFinite(time.total))) {
    return refusal(
      'noTime',
      `No time follows for the job ${job.id}`,
      'Look for a path, segment or corner that is 0 or negative in its profile.',
    );
  }
  const { mass, cost } = jobFilament(figures, job);
  return success({
    ...{ machine, nozzle, filament },
    time: time.total,
    timeInterval: timeInterval(figures, job, meltShare),
    lessMelt: lesserShares
      .filter((share) => share < meltShare)
      .flatMap((share) => {
        const slower = timeOf(figures, job, () => share);
        return slower === null ? [] : [{ share, time: slower }];
      }),
    features: featureTimes(time, speeds),
    betweenLayers: time.layerChanges + time.coolingWait,
    limiters: longestFirst(limitersOfPrint(time, speeds)),
    printPeak: highestPeak(time, isPrinted),
    travelPeak: highestPeak(time, (feature) => !isPrinted(feature)),
    ...{ topSpeed, mass, filamentCost: cost, soundLevel, price },
    weakest: weakestNumber(time, speeds, pauses),
    modelCheck,
    warnings: [...beadWarnings(figures, job), ...unknownPauses(pauses, time)],
    quirks,
    trials: [...[...speeds.values()].flatMap(({ trials }) => trials), ...figures.trials],
  });
}

/** Total time of a job at a share of each melt flow limit; null where no path has a speed. */
export function timeOf(figures: PairingFigures, job: JobPaths, meltShare: MeltShare): Seconds | null {
  const speeds = jobSpeeds(figures, job, meltShare);
  if (!speeds.ok) return null;
  return printTime(jobPlan(job, speeds.value, secondsOfPauses(figures.pauses))).total;
}

/** Each limit at its ends; a limit that was adopted below its interval is the lower end. */
function timeInterval(figures: PairingFigures, job: JobPaths, meltShare: Fraction): Range | null {
  const asked = features.filter((feature) => isPrinted(feature) && job.features[feature] !== undefined);
  const limits = asked.flatMap((feature) =>
    figures.paths[feature].bounds.filter(({ name }) => name === 'melt'),
  );
  if (limits.length === 0 || limits.some((limit) => limit.of === 'flow' && limit.interval === null))
    return null;
  const [fastest, slowest] = [
    timeOf(figures, job, ({ interval }) => meltShare * Math.max(1, interval?.high ?? 1)),
    timeOf(figures, job, ({ interval }) => meltShare * Math.min(1, interval?.low ?? 1)),
  ];
  return fastest === null || slowest === null ? null : { low: fastest, high: slowest };
}

function unknownPauses(stated: PairingFigures['pauses'], time: PrintTime<JobFeature>): string[] {
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
  time: PrintTime<JobFeature>,
  speeds: Speeds,
  { layerChange, travel, shortestLayerTime }: PairingFigures['pauses'],
): NamedBasis {
  const named = (of: string, known: Known<Seconds> | null, used: boolean): NamedBasis[] =>
    known === null || !used ? [] : [{ basis: known.basis, of, isSimulated: known.isSimulated }];
  return weakestOf({ basis: 'measured', of: 'every number', isSimulated: false }, [
    ...[...speeds.values()].map(({ weakest }) => weakest),
    ...named('layerChangeTime', layerChange, time.layerChanges > 0),
    ...named('travelPause', travel, (time.paths.get('travel')?.pauses ?? 0) > 0),
    ...named('shortestLayerTime', shortestLayerTime, time.coolingWait > 0),
  ]);
}
