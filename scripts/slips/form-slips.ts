import { isNode, isScalar } from 'yaml';
import { shapes } from '../../src/registry/generated/shapes.ts';
import type { AnyProfile } from '../../src/registry/profile.ts';
import { leavesOf, type Path } from '../../src/registry/shape.ts';
import { statementsOf } from '../../src/registry/statement.ts';
import { placeAt } from '../../src/registry/yaml/yaml-document.ts';
import type { RandomSource } from '../../src/statistics/random.ts';
import { lineEnd } from '../../src/text/line-end.ts';
import { keysOf } from './key-spans.ts';
import { type Slip, scalarSlip, textSlip } from './slip.ts';

/** Slips that leave no well-formed file, or a form that no kind of profile has. */
export function formSlips(profile: AnyProfile, random: RandomSource): Slip[] {
  const keys = keysOf(profile.yaml.tree.contents);
  return [
    ...keys.flatMap((path) => misspelledKey(profile, path, random)),
    ...words(profile).flatMap(({ path, word }) =>
      scalarSlip('misspelled word', profile, path, misspelled(word, random)),
    ),
    ...keys.filter(({ length }) => length === 1).flatMap((path) => keyTwice(profile, path)),
    ...mergeMarkers(profile, keys),
    ...leavesOf('date', shapes[profile.kind], profile.written)
      .filter(({ value }) => typeof value === 'string')
      .flatMap(({ path, value }) =>
        scalarSlip('day that does not exist', profile, path, `${String(value).slice(0, 5)}02-30`),
      ),
  ];
}

function misspelledKey(profile: AnyProfile, path: Path, random: RandomSource): Slip[] {
  const key = placeAt(profile.yaml, path)?.key;
  const name = String(path.at(-1));
  if (!isScalar(key) || !key.range || name.length < 2) return [];
  const after = misspelled(name, random);
  const wrong = [...path.slice(0, -1), after];
  return textSlip('misspelled key', profile, wrong, [key.range[0], key.range[1]], after);
}

/** A letter left out, doubled, or exchanged with its neighbour. */
function misspelled(key: string, random: RandomSource): string {
  const at = Math.floor(random.uniform() * (key.length - 1));
  const [one, two] = [key.charAt(at), key.charAt(at + 1)];
  const forms = [one + one + two, two, ...(one === two ? [] : [two + one])];
  const form = forms[Math.floor(random.uniform() * forms.length)] ?? one;
  return key.slice(0, at) + form + key.slice(at + 2);
}

/** Words of closed lists. */
function words(profile: AnyProfile): { path: Path; word: string }[] {
  const bases = [...statementsOf(profile)].map(({ path, statement }) => ({
    path: [...path, 'basis'],
    word: statement.basis,
  }));
  const { data } = profile;
  const others =
    profile.kind === 'trial'
      ? [{ path: ['method'], word: profile.data.method }]
      : 'layout' in data
        ? [{ path: ['layout'], word: data.layout }]
        : [];
  return [...bases, ...others];
}

function keyTwice(profile: AnyProfile, path: Path): Slip[] {
  const { key, value } = placeAt(profile.yaml, path) ?? {};
  if (!isNode(key) || !isScalar(value) || !key.range || !value.range) return [];
  const { text } = profile.source;
  const end = lineEnd(text, value.range[1]);
  const line = text.slice(key.range[0], end);
  return textSlip('key written twice', profile, path, [end, end], line);
}

/** Both sides of a merge left in the file, around a line of a key at the root. */
function mergeMarkers(profile: AnyProfile, keys: readonly Path[]): Slip[] {
  return keys
    .filter(({ length }) => length === 1)
    .flatMap((path) => {
      const { key, value } = placeAt(profile.yaml, path) ?? {};
      if (!isNode(key) || !isScalar(value) || !key.range || !value.range) return [];
      const { text } = profile.source;
      const end = lineEnd(text, value.range[1]);
      const line = text.slice(key.range[0], end);
      const both = `<<<<<<< HEAD\n${line}=======\n${line}>>>>>>> bench\n`;
      return textSlip('merge markers', profile, path, [key.range[0], end], both);
    });
}
