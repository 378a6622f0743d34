import { readFileSync, readlinkSync } from 'node:fs';
import { hostname } from 'node:os';
import { threadId } from 'node:worker_threads';

/** A process that writes, as the names of what it leaves behind tell it. */
interface Writer {
  /** Computer, start of its system and container, as far as they can be told. */
  readonly system: string;
  readonly pid: number;
  /** When it began, in ticks since the start of its system; empty where the system does not tell. */
  readonly start: string;
}

/** What a writer does with a name: it holds a folder, or writes what is to be renamed. */
type MarkUse = 'lock' | 'part';

const pattern = /^\.meltbounds-([A-Za-z0-9_]+)-(\d+)-(\d*)-\d+-\d+\.(lock|part)$/;

let marks = 0;

/** Start of names that nobody else gives, now or later. A registry looks at no name that begins with a dot. */
export function newMark(): string {
  marks += 1;
  const { pid } = process;
  return `.meltbounds-${ownSystem()}-${pid}-${startOf(pid) ?? ''}-${threadId}-${marks}`;
}

/** Name of what a mark is used for. */
export function markedName(mark: string, use: MarkUse): string {
  return `${mark}.${use}`;
}

/** What a name says of who gave it; null where it is none of ours. */
export function readMark(name: string): { readonly writer: Writer; readonly use: string } | null {
  const [, system, pid, start, use] = pattern.exec(name) ?? [];
  return system === undefined || use === undefined
    ? null
    : { writer: { system, pid: Number(pid), start: start ?? '' }, use };
}

/**
 * Whether a writer is still at work; null where that cannot be seen from here, of another computer or container for
 * instance. A process that has the number of an earlier one has another start.
 */
export function isAtWork({ system, pid, start }: Writer): boolean | null {
  if (system !== ownSystem()) return null;
  const began = startOf(pid);
  if (began !== null && start !== '') return began === start;
  // Other people's processes may be hidden, but answer.
  return answers(pid) ? null : false;
}

function answers(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code !== 'ESRCH';
  }
}

/** When a process began, as Linux tells it; null where it does not, or where the process has ended. */
function startOf(pid: number): string | null {
  // The name of the program, in brackets, may hold anything.
  const [state, ...rest] = (textOf(`/proc/${pid}/stat`) ?? '').split(') ').at(-1)?.split(' ') ?? [];
  return state === 'Z' || state === 'X' ? 'ended' : (rest[18] ?? null);
}

let system: string | null = null;

function ownSystem(): string {
  system ??= [
    hostname().slice(0, 30),
    textOf('/proc/sys/kernel/random/boot_id')?.slice(0, 8) ?? '',
    linkOf('/proc/self/ns/pid'),
  ]
    .map((part) => part.replace(/[^A-Za-z0-9]/g, ''))
    .join('_');
  return system;
}

function textOf(path: string): string | null {
  try {
    return readFileSync(path, 'latin1');
  } catch {
    return null;
  }
}

function linkOf(path: string): string {
  try {
    return readlinkSync(path);
  } catch {
    return '';
  }
}
