import { closeSync, existsSync, openSync } from 'node:fs';
import { join } from 'node:path';
import { type Problem, type Result, refusal } from '../../result.ts';
import { printable } from '../../text/printable.ts';
import { locksIn, removeQuietly } from './leftovers.ts';
import { markedName, newMark, readMark } from './writer.ts';

/** For how long a writer is waited for, ms: one that can be seen at work, and one that cannot be seen from here. */
const patience = { seen: 30_000, unseen: 10_000 } as const;

/** Step by which the pauses grow, ms; to write one file takes about as long. */
const pauseStep = 2;

/**
 * Does some work while no other run writes into a folder. What runs have left there that ended before their time is removed
 * first. The work is given the mark that its own names begin with. Problems: another run does not come to an end.
 *
 * A lock is a file whose name tells its process; it counts only as long as that process does. Everyone puts up a lock of
 * their own and then looks whether there is another: whoever sees one steps back. So nobody ever takes another's lock away,
 * but for those of the dead, and that does no harm.
 */
export async function underLock<Value, Failure>(
  folder: string,
  named: string,
  work: (mark: string) => Result<Value, Failure>,
): Promise<Result<Value, Failure | Problem<'busy'>>> {
  const waitedFor = new Map<string, number>();
  for (let waited = 0, turn = 1; ; turn++) {
    const attempt = whileAlone(folder, waitedFor, work);
    if (attempt.done) return attempt.result;
    if (waited > patience.seen) return busy(named, attempt.others);
    const pause = pauseStep * (attempt.isFirst ? 1 : 1 + Math.min(turn, 10));
    await new Promise((resolve) => setTimeout(resolve, pause));
    waited += pause;
    for (const name of attempt.others) waitedFor.set(name, (waitedFor.get(name) ?? 0) + pause);
  }
}

/** Locks that this process is done with and that could not be removed; it does not wait for itself. */
const doneWith = new Set<string>();

type Attempt<Done> =
  | { readonly done: true; readonly result: Done }
  /** `isFirst`: of those that stepped back for one another, this one comes next. */
  | { readonly done: false; readonly others: readonly string[]; readonly isFirst: boolean };

function whileAlone<Done>(
  folder: string,
  waitedFor: ReadonlyMap<string, number>,
  work: (mark: string) => Done,
): Attempt<Done> {
  const isGivenUp = (name: string) => (waitedFor.get(name) ?? 0) > patience.unseen;
  const locks = () => locksIn(folder, isGivenUp).filter((name) => !doneWith.has(name));
  const before = locks();
  if (before.length > 0) return { done: false, others: before, isFirst: false };
  const mark = newMark();
  const own = markedName(mark, 'lock');
  closeSync(openSync(join(folder, own), 'wx'));
  try {
    const others = locks().filter((name) => name !== own);
    if (others.length > 0) return { done: false, others, isFirst: others.every((name) => own < name) };
    return { done: true, result: work(mark) };
  } finally {
    removeQuietly(join(folder, own));
    if (existsSync(join(folder, own))) doneWith.add(own);
  }
}

function busy(named: string, [lock = '']: readonly string[]) {
  const pid = readMark(lock)?.writer.pid;
  return refusal(
    'busy',
    `${printable(named)} is being written by another run (process ${pid}); nothing was written`,
    'Run the command again when that one has ended, or end it.',
  );
}
