import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { parse } from 'yaml';
import { shapes } from '../src/registry/generated/shapes.ts';
import { expectedPath, type Kind, kindFolders } from '../src/registry/kind.ts';
import type { RuleExample } from '../src/rules/engine/rule.ts';
import { sampleRegistry } from './sample-registry.ts';

/** A copy of the sample registry to which the keys of an example of a rule are applied. */
export interface ExampleRegistry {
  readonly cwd: string;
  /** The one file that the example has changed or added, from the root of the registry. */
  readonly file: string;
  readonly text: string;
}

export function exampleRegistry({ kind, copied }: RuleExample, keys: string): ExampleRegistry {
  const registry = sampleRegistry();
  const path = firstProfile(join(registry.cwd, 'profiles'), kind);
  const text = withKeys(readFileSync(path, 'utf8'), keys, kind);
  const written = copied ? join(registry.cwd, 'profiles', pathOfId(text, kind)) : path;
  mkdirSync(dirname(written), { recursive: true });
  writeFileSync(written, text);
  return { cwd: registry.cwd, file: relative(join(registry.cwd, 'profiles'), written), text };
}

function firstProfile(root: string, kind: Kind): string {
  const folder = join(root, kindFolders[kind]);
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) =>
    /\.yaml$/.test(file),
  );
  return join(folder, files.sort()[0] ?? '');
}

function pathOfId(text: string, kind: Kind): string {
  const { id, date } = parse(text) as { id: string; date?: string };
  return expectedPath(kind, id, date?.slice(0, 4) ?? '');
}

/**
 * Replaces keys at the root of a profile as text. A new key stands where the schema has it, unless the example lists its
 * keys in another order than the schema: then they replace the first of them as they stand.
 */
function withKeys(profile: string, keys: string, kind: Kind): string {
  const order = Object.keys(shapes[kind].properties);
  const rank = ([key]: readonly [string, string]) => order.indexOf(key);
  const replaced = blocksOf(`${keys}\n`);
  const names = replaced.map(([key]) => key);
  const kept = blocksOf(profile).filter(([key]) => !names.includes(key));
  const inOrder = replaced.every((block, index) => index === 0 || rank(replaced[index - 1]!) <= rank(block));
  const first = Math.min(...replaced.map(rank));
  const all = inOrder
    ? [...kept, ...replaced].sort((a, b) => rank(a) - rank(b))
    : [...kept.filter((b) => rank(b) < first), ...replaced, ...kept.filter((b) => rank(b) > first)];
  return all.map(([, text]) => text).join('');
}

/** The keys at the root of a text with their lines; what stands above the first key goes with it. */
function blocksOf(text: string): (readonly [string, string])[] {
  const parts = text.split(/^(?=[a-zA-Z]\w*:)/m);
  const header = parts[0]?.startsWith('#') ? parts.shift() : '';
  return parts.map((part, index) => [part.slice(0, part.indexOf(':')), (index === 0 ? header : '') + part]);
}
