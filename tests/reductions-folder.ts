import { mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { TestProject } from 'vitest/node';
import { digestOfFiles } from '../src/host/program-digest.ts';
import { sha256Of } from '../src/text/sha256.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where test files put down the trials that they have reduced, for each other and for later runs of the same code. */
    readonly reductions: string;
    /** Tells the code of this run from any other: what commands remember of a check rests on all of it. */
    readonly program: string;
  }
}

const root = fileURLToPath(new URL('..', import.meta.url));
const cache = join(root, 'node_modules', '.cache', 'meltbounds-tests');

/** A folder that belongs to the code that reduces: to all rooms that the bench rests on, their packages and Node. */
export default function reductionsFolder(project: TestProject): void {
  const provide = () => {
    const name = digestOfCode();
    mkdirSync(join(cache, name), { recursive: true });
    for (const other of readdirSync(cache)) {
      if (other !== name) rmSync(join(cache, other), { recursive: true, force: true });
    }
    project.provide('reductions', join(cache, name));
    project.provide('program', digestOfFiles(join(root, 'src')));
  };
  provide();
  project.onTestsRerun(provide);
}

function digestOfCode(): string {
  const rooms = ['text', 'units', 'physics', 'statistics', 'plots', 'registry', 'bench'];
  const digests = rooms.map((room) => digestOfFiles(join(root, 'src', room)));
  const packages = readFileSync(join(root, 'package-lock.json'), 'utf8');
  return sha256Of([...digests, packages, process.version].join('\n')).slice(0, 16);
}
