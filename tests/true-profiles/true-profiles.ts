import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { type LoadedRegistry, loadFiles } from '../../src/registry/load-files.ts';

const corpus = fileURLToPath(new URL('./registry/', import.meta.url));
const demo = fileURLToPath(new URL('../../profiles/', import.meta.url));

/** The day on which the corpus is judged: later than every date in it and in the sources of the demo. */
export const corpusDay = '2027-01-15';

/** True profiles by their paths, with the families and sources of the demo registry that they rest on. */
export function trueTexts(): ReadonlyMap<string, string> {
  const shared = textsIn(demo, /^(?:polymers|sources)\//);
  return new Map([...shared, ...textsIn(corpus, /./)]);
}

/** The same as a registry. */
export function trueRegistry(): LoadedRegistry {
  return loadFiles([{ folder: '', texts: trueTexts() }]);
}

/** A warning that a colleague would give about a true profile, too. */
interface ExpectedWarning {
  readonly file: string;
  readonly rule: string;
  readonly reason: string;
}

export function expectedWarnings(): readonly ExpectedWarning[] {
  return parse(
    readFileSync(new URL('./expected-warnings.yaml', import.meta.url), 'utf8'),
  ) as ExpectedWarning[];
}

function textsIn(folder: string, wanted: RegExp): [string, string][] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((file) => file.replaceAll('\\', '/'))
    .filter((file) => /\.(?:csv|ya?ml)$/.test(file) && wanted.test(file))
    .map((file) => [file, readFileSync(folder + file, 'utf8')]);
}
