import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';
import { aroundOnly, replacedOnce } from './sample-texts.ts';

const original = fileURLToPath(new URL('./fixtures/registry', import.meta.url));

/** A copy of the sample registry in a folder of its own, which goes when the test is over. */
export interface SampleRegistry {
  /** The folder that holds `profiles/`: the working directory of a user. */
  readonly cwd: string;
  /** Absolute path of a file, given from the root of the registry. */
  readonly path: (file: string) => string;
  readonly read: (file: string) => string;
  readonly write: (file: string, text: string) => void;
  /** Replaces one stretch of a file, which must stand there exactly once. */
  readonly edit: (file: string, from: string, to: string) => void;
  readonly remove: (file: string) => void;
  /** Line and column at which a stretch of a file begins, which must stand there exactly once. */
  readonly placeOf: (file: string, stretch: string) => { readonly line: number; readonly column: number };
  /** How many profiles it holds. */
  readonly size: () => number;
  /** Copies a folder over the registry. */
  readonly overlay: (folder: string) => void;
}

/** In a folder of its own, inside of a test. */
export function sampleRegistry(cwd: string = temporaryFolder()): SampleRegistry {
  const path = (file: string) => join(cwd, 'profiles', file);
  const read = (file: string) => readFileSync(path(file), 'utf8');
  const write = (file: string, text: string) => {
    mkdirSync(dirname(path(file)), { recursive: true });
    writeFileSync(path(file), text);
  };
  cpSync(original, join(cwd, 'profiles'), { recursive: true });
  return {
    cwd,
    path,
    read,
    write,
    edit: (file, from, to) => write(file, replacedOnce(read(file), from, to)),
    remove: (file) => rmSync(path(file)),
    placeOf: (file, stretch) => placeIn(read(file), stretch),
    size: () => profilesIn(join(cwd, 'profiles')),
    overlay: (folder) => cpSync(folder, join(cwd, 'profiles'), { recursive: true }),
  };
}

/** The same with one error: in `filaments/oakhollow/daisy-pla.yaml` a number has lost its unit. */
export function registryWithError(): SampleRegistry {
  const registry = sampleRegistry();
  registry.edit('filaments/oakhollow/daisy-pla.yaml', '22 mm3/s', '22');
  return registry;
}

/** An empty folder, which goes when the test is over. */
export function temporaryFolder(): string {
  // The folder for temporary files may itself be a link, and reports show real paths.
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'meltbounds-')));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

function profilesIn(folder: string): number {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' });
  return files.filter((file) => /\.ya?ml$/.test(file)).length;
}

function placeIn(text: string, stretch: string): { readonly line: number; readonly column: number } {
  const [before] = aroundOnly(text, stretch);
  const lines = before.split('\n');
  return { line: lines.length, column: (lines.at(-1) ?? '').length + 1 };
}
