import { type Problem, type Result, refusal, success } from '../../result.ts';
import { quote } from '../../text/quote.ts';
import { isObject } from '../shape.ts';
import { type IndexedFile, indexFormat } from './registry-index.ts';

/** Files that an index names, sheets too. The problem says what the text is instead of an index. */
export function readRegistryIndex(text: string): Result<readonly IndexedFile[], Problem<'noIndex'>> {
  const value = parsed(text);
  if (!isObject(value)) return noIndex('it is not a JSON object');
  if (value.format !== indexFormat) {
    return noIndex(`its "format" is "${quote(value.format)}", and this program reads "${indexFormat}"`);
  }
  if (!Array.isArray(value.profiles)) return noIndex('its "profiles" is not a list');
  const entries: readonly unknown[] = value.profiles;
  const files = entries.flatMap((entry) =>
    isObject(entry) && entry.sheet !== undefined ? [entry, entry.sheet] : [entry],
  );
  const wrong = files.find((file) => !isIndexedFile(file));
  if (wrong !== undefined)
    return noIndex(`it lists ${quote(wrong)}, which is no path inside a registry with its sha256`);
  const sound = files.filter(isIndexedFile);
  const repeated = firstRepeated(sound.map(({ path }) => path));
  return repeated === null ? success(sound) : noIndex(`it lists ${quote(repeated)} more than once`);
}

function firstRepeated(paths: readonly string[]): string | null {
  const seen = new Set<string>();
  for (const path of paths) {
    if (seen.has(path)) return path;
    seen.add(path);
  }
  return null;
}

function noIndex(what: string) {
  return refusal('noIndex', `This is no index: ${what}`, '`meltbounds index --out FILE` writes one.');
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** A path that leads nowhere but down, and a digest. */
function isIndexedFile(value: unknown): value is IndexedFile {
  if (!isObject(value)) return false;
  const { path, sha256 } = value;
  if (typeof path !== 'string' || typeof sha256 !== 'string') return false;
  const steps = path.split('/');
  return (
    steps.every((step) => !['', '.', '..'].includes(step) && !/[\\\p{Cc}]/u.test(step)) &&
    /^[0-9a-f]{64}$/.test(sha256)
  );
}
