import type { JobFeature } from '../../bench/reference-print/job-plan.ts';
import { type PathTime, type PrintTime, secondsOf } from '../../physics/print-time.ts';
import type { Seconds } from '../../units/canonical.ts';
import type { TimeHolder } from './job-estimate.ts';
import type { JobSpeed } from './job-speeds.ts';

/** What a time is spent under. */
type HeldTime = ReadonlyMap<TimeHolder, Seconds>;

/**
 * What the time of a path is spent under: at the commanded speed the bound that holds it, below it motion, and
 * handling while the filament is drawn back and pushed on.
 */
function holdersOfPath({ cruise, ramps, pauses }: PathTime, { bound }: JobSpeed): HeldTime {
  return added([
    [bound, cruise],
    ['motion', ramps],
    ['handling', pauses],
  ]);
}

/** What the time of a whole print is spent under: its paths, changes of layer as handling, and waits as cooling. */
export function holdersOfPrint(
  time: PrintTime<JobFeature>,
  speeds: ReadonlyMap<JobFeature, JobSpeed>,
): HeldTime {
  const ofPaths = [...time.paths].flatMap(([feature, path]) => {
    const speed = speeds.get(feature);
    return speed === undefined ? [] : [...holdersOfPath(path, speed)];
  });
  return added([...ofPaths, ['handling', time.layerChanges], ['cooling', time.coolingWait]]);
}

/** Holders from the longest time to the shortest, without those of no time. */
export function longestFirst(held: HeldTime): { readonly holder: TimeHolder; readonly time: Seconds }[] {
  return [...held]
    .map(([holder, time]) => ({ holder, time }))
    .filter(({ time }) => time > 0)
    .sort((a, b) => b.time - a.time);
}

/** The holder of most of the time of a path. */
export function mainHolder(path: PathTime, speed: JobSpeed): TimeHolder {
  return secondsOf(path) > 0
    ? (longestFirst(holdersOfPath(path, speed))[0]?.holder ?? speed.bound)
    : speed.bound;
}

function added(times: readonly (readonly [TimeHolder, Seconds])[]): HeldTime {
  const held = new Map<TimeHolder, Seconds>();
  for (const [holder, time] of times) held.set(holder, (held.get(holder) ?? 0) + time);
  return held;
}
