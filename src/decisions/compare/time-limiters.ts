import type { JobFeature } from '../../bench/reference-print/job-plan.ts';
import { type PathTime, type PrintTime, secondsOf } from '../../physics/print-time.ts';
import type { Seconds } from '../../units/canonical.ts';
import type { TimeLimiter } from './job-estimate.ts';
import type { JobSpeed } from './job-speeds.ts';

/** Time by what limits it. */
type LimitedTime = ReadonlyMap<TimeLimiter, Seconds>;

/**
 * What limits the time of a path: at the commanded speed the bound that sets it, below it motion, and
 * handling while the filament is drawn back and pushed on.
 */
function limitersOfPath({ cruise, ramps, pauses }: PathTime, { bound }: JobSpeed): LimitedTime {
  return added([
    [bound, cruise],
    ['motion', ramps],
    ['handling', pauses],
  ]);
}

/** What limits the time of a whole print: its paths, changes of layer as handling, and waits as cooling. */
export function limitersOfPrint(
  time: PrintTime<JobFeature>,
  speeds: ReadonlyMap<JobFeature, JobSpeed>,
): LimitedTime {
  const ofPaths = [...time.paths].flatMap(([feature, path]) => {
    const speed = speeds.get(feature);
    return speed === undefined ? [] : [...limitersOfPath(path, speed)];
  });
  return added([...ofPaths, ['handling', time.layerChanges], ['cooling', time.coolingWait]]);
}

/** Limiters from the longest time to the shortest, without those of no time. */
export function longestFirst(
  limited: LimitedTime,
): { readonly limiter: TimeLimiter; readonly time: Seconds }[] {
  return [...limited]
    .map(([limiter, time]) => ({ limiter, time }))
    .filter(({ time }) => time > 0)
    .sort((a, b) => b.time - a.time);
}

/** The limiter of most of the time of a path. */
export function mainLimiter(path: PathTime, speed: JobSpeed): TimeLimiter {
  return secondsOf(path) > 0
    ? (longestFirst(limitersOfPath(path, speed))[0]?.limiter ?? speed.bound)
    : speed.bound;
}

function added(times: readonly (readonly [TimeLimiter, Seconds])[]): LimitedTime {
  const limited = new Map<TimeLimiter, Seconds>();
  for (const [limiter, time] of times) limited.set(limiter, (limited.get(limiter) ?? 0) + time);
  return limited;
}
