import type { Profile } from '../../registry/profile.ts';
import { isObject } from '../../registry/shape.ts';
import type { Fact } from '../../text/document.ts';
import { capitalised, wordsOf } from '../../text/words.ts';

/** What a trial states under some of its keys, as it is written: `Scale, resolution` with `0.01 g`. */
export function writtenFacts({ written }: Profile<'trial'>, keys: readonly string[]): Fact[] {
  if (!isObject(written)) return [];
  return keys.flatMap((key) => [...leaves(written[key], key === 'conditions' ? [] : [key])]);
}

function* leaves(value: unknown, path: readonly string[]): Generator<Fact> {
  if (isObject(value)) {
    for (const [key, inner] of Object.entries(value)) yield* leaves(inner, [...path, key]);
  } else if (typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean') {
    yield [capitalised(path.map(wordsOf).join(', ')), String(value)];
  }
}
