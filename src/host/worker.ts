import { parentPort } from 'node:worker_threads';
import { type ReductionInputs, resultsOf } from '../bench/reduce-trial.ts';
import { readSoundProfile } from '../registry/read-profile.ts';

/** What a thread can be asked to do. */
export type Job =
  | { readonly reduce: readonly ReductionInputs[] }
  | { readonly parse: readonly (readonly [text: string, relativePath: string])[] };

/** The results of a job in its order: JSON of reductions, or what `readSoundProfile` gives. */
function work(job: Job): unknown[] {
  return 'reduce' in job
    ? job.reduce.map((inputs) => JSON.stringify(resultsOf(inputs)))
    : job.parse.map(([text, path]) => readSoundProfile(text, path));
}

parentPort?.on('message', (job: Job) => parentPort?.postMessage(work(job)));
