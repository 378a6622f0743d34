import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** What a process took, its threads included. */
export interface Cost {
  /** Processor time in seconds, that of the system for it included. */
  readonly cpu: number;
  /** From its start to its end, in seconds. */
  readonly wall: number;
  /** Largest resident memory in MB. */
  readonly memory: number;
}

/** In CommonJS, since the loader of ES modules would weigh on the shortest programs. */
const meter = fileURLToPath(new URL('./meter.cjs', import.meta.url));

/** Runs Node with some arguments and tells what it took. */
export function costOfNode(args: readonly string[], cwd: string, cache: string): Cost {
  const start = process.hrtime.bigint();
  const { output, status } = spawnSync(process.execPath, ['--require', meter, ...args], {
    cwd,
    env: { ...process.env, MELTBOUNDS_CACHE: cache, NO_COLOR: '1' },
    stdio: ['ignore', 'ignore', 'pipe', 'pipe'],
    encoding: 'utf8',
    maxBuffer: 1 << 26,
  });
  const wall = Number(process.hrtime.bigint() - start) / 1e9;
  // Findings are no failure of what is timed.
  if (status !== 0 && status !== 1) throw new Error(`node ${args.join(' ')}: ${output[2]}`);
  const [cpu, memory] = JSON.parse(output[3] ?? '') as [number, number];
  return { cpu, wall, memory };
}
