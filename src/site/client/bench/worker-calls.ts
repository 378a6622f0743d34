import type { BenchAnswers, BenchQuestion, SessionStart } from '../../bench/questions.ts';

/** What the page sends to its worker. */
export type WorkerMessage =
  | { readonly start: SessionStart }
  | { readonly number: number; readonly question: BenchQuestion };

/** What comes back: an answer, null where a newer question has replaced it, or a fault of the program. */
export type WorkerAnswer =
  | { readonly number: number; readonly answer: BenchAnswers[BenchQuestion['ask']] | null }
  | { readonly number: number; readonly fault: string };

/** The worker as the page sees it. */
export interface BenchWorker {
  readonly start: (start: SessionStart) => void;
  /** Null where a newer question of the same kind has replaced this one. */
  readonly ask: <Ask extends BenchQuestion['ask']>(
    question: BenchQuestion & { readonly ask: Ask },
  ) => Promise<BenchAnswers[Ask] | null>;
}

/** Starts the worker; `failed` hears of faults, after which the form goes on without results. */
export function startWorker(address: string, failed: (fault: string) => void): BenchWorker {
  const worker = new Worker(address);
  const waiting = new Map<number, (answer: never) => void>();
  let last = 0;
  worker.addEventListener('message', ({ data }: MessageEvent<WorkerAnswer>) => {
    const heard = waiting.get(data.number);
    waiting.delete(data.number);
    if ('fault' in data) failed(data.fault);
    // An answer is that of its question, which the number tells.
    heard?.(('fault' in data ? null : data.answer) as never);
  });
  worker.addEventListener('error', ({ message }) => failed(message));
  return {
    start: (start) => worker.postMessage({ start } satisfies WorkerMessage),
    ask: (question) =>
      new Promise((resolve) => {
        last += 1;
        waiting.set(last, resolve);
        worker.postMessage({ number: last, question } satisfies WorkerMessage);
      }),
  };
}
