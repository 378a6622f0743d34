import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { ReductionInputs } from '../bench/reduce-trial.ts';
import type { SoundProfile } from '../registry/read-profile.ts';
import type { Job } from './worker.ts';

/** What threads do beside the one that asks; the results stand in the order of what they were asked for. */
export interface Threads {
  /** JSON of each reduction. */
  readonly reduce: (inputs: readonly ReductionInputs[]) => Promise<readonly string[]>;
  /** Of each text what it holds if its form is sound, else null. */
  readonly parse: (
    texts: readonly (readonly [text: string, relativePath: string])[],
  ) => Promise<readonly (SoundProfile | null)[]>;
}

/** More threads than this only wait for each other. */
const mostThreads = 16;
/** Small enough that the threads end together, large enough that handing over does not count. */
const batch = { reduce: 8, parse: 64 } as const;

/** What a thread runs, as it stands above this file in a build. */
const builtWorker = new URL('../cli.cjs', import.meta.url);

/** Threads of this machine, as many as it has processors, or as many as are asked for. */
export function threadsOfMachine(
  count = Math.min(mostThreads, availableParallelism()),
  program = builtWorker,
): Threads {
  const inBatches = async <Asked, Given>(
    items: readonly Asked[],
    size: number,
    jobOf: (part: readonly Asked[]) => Job,
  ): Promise<Given[]> => {
    const parts = Array.from({ length: Math.ceil(items.length / size) }, (_, index) =>
      items.slice(index * size, (index + 1) * size),
    );
    const done = await inThreads(parts.map(jobOf), Math.min(count, parts.length), program);
    return done.flat() as Given[]; // what `work` gives for such a job
  };
  return {
    reduce: (inputs) => inBatches(inputs, batch.reduce, (reduce) => ({ reduce })),
    parse: (texts) => inBatches(texts, batch.parse, (parse) => ({ parse })),
  };
}

/** Gives each thread the next job as soon as it is done with the last. */
async function inThreads(jobs: readonly Job[], count: number, program: URL): Promise<unknown[][]> {
  const results: unknown[][] = [];
  let next = 0;
  const serve = () =>
    new Promise<void>((resolve, reject) => {
      const worker = new Worker(program, { resourceLimits: { maxYoungGenerationSizeMb: 4 } });
      let at = -1;
      const giveNext = () => {
        at = next++;
        const job = jobs[at];
        if (job === undefined) void worker.terminate().then(() => resolve());
        else worker.postMessage(job);
      };
      worker.on('message', (result: unknown[]) => {
        results[at] = result;
        giveNext();
      });
      worker.on('error', reject);
      giveNext();
    });
  await Promise.all(Array.from({ length: count }, serve));
  return results;
}
