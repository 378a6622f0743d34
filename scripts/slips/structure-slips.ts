import { isMap, isNode, isScalar, visit } from 'yaml';
import { nozzleIds } from '../../src/registry/nozzle.ts';
import type { AnyProfile } from '../../src/registry/profile.ts';
import type { Registry } from '../../src/registry/registry.ts';
import type { Path } from '../../src/registry/shape.ts';
import { statementsOf } from '../../src/registry/statement.ts';
import { placeAt } from '../../src/registry/yaml/yaml-document.ts';
import type { RandomSource } from '../../src/statistics/random.ts';
import { type Slip, type SlipKind, scalarSlip, textSlip } from './slip.ts';

/** All slips in keys, provenance and references of a profile. */
export function structureSlips(profile: AnyProfile, registry: Registry, random: RandomSource): Slip[] {
  return [
    ...misspelledKeys(profile, random),
    ...dropped('dropped source', 'source', profile),
    ...dropped('dropped evidence', 'evidence', profile),
    ...droppedConditions(profile),
    ...dropped('dropped interval', 'interval', profile),
    ...swappedPolymers(profile, registry),
    ...swappedNozzles(profile, registry),
    ...droppedFillers(profile),
  ];
}

function misspelledKeys(profile: AnyProfile, random: RandomSource): Slip[] {
  const slips: Slip[] = [];
  visit(profile.yaml.tree, {
    Pair(_, { key }, ancestors) {
      if (!isScalar(key) || typeof key.value !== 'string' || !key.range) return;
      const after = misspelled(key.value, random);
      const path = [...pathOf(ancestors), after];
      slips.push(...textSlip('misspelled key', profile, path, [key.range[0], key.range[1]], after));
    },
  });
  return slips;
}

/** Path of the innermost mapping among a pair's ancestors. */
function pathOf(ancestors: readonly unknown[]): Path {
  const path: (string | number)[] = [];
  for (const [index, node] of ancestors.entries()) {
    const child = ancestors[index + 1];
    if (typeof node !== 'object' || node === null) continue;
    if ('items' in node && Array.isArray(node.items) && !isMap(node) && child !== undefined) {
      path.push(node.items.indexOf(child));
    }
    if ('key' in node && isScalar(node.key)) path.push(String(node.key.value));
  }
  return path;
}

/** A letter left out, doubled, or exchanged with its neighbour. */
function misspelled(key: string, random: RandomSource): string {
  const at = Math.floor(random.uniform() * (key.length - 1));
  const [one, two] = [key.charAt(at), key.charAt(at + 1)];
  const forms = [one + one + two, two, ...(one === two ? [] : [two + one])];
  const form = forms[Math.floor(random.uniform() * forms.length)] ?? one;
  return key.slice(0, at) + form + key.slice(at + 2);
}

function dropped(kind: SlipKind, key: 'source' | 'evidence' | 'interval', profile: AnyProfile): Slip[] {
  return [...statementsOf(profile)]
    .filter(
      ({ statement }) =>
        statement[key] !== undefined && (key !== 'interval' || statement.basis === 'measured'),
    )
    .flatMap(({ path }) => {
      const span = spanOfPair(profile, [...path, key]);
      return span === null ? [] : textSlip(kind, profile, path, span, '');
    });
}

/** The key with its value and the comma or line that it takes; null where it opens its mapping. */
function spanOfPair({ source: { text }, yaml }: AnyProfile, path: Path): readonly [number, number] | null {
  const { key, value } = placeAt(yaml, path) ?? {};
  if (!isNode(key) || !isNode(value) || !key.range || !value.range) return null;
  const room = /(?:,\s*|\n[ ]*)$/.exec(text.slice(0, key.range[0]))?.[0];
  return room === undefined ? null : [key.range[0] - room.length, value.range[1]];
}

/** Each condition of a measured statement left out, and all of them. */
function droppedConditions(profile: AnyProfile): Slip[] {
  const measured = [...statementsOf(profile)].filter(({ statement }) => statement.basis === 'measured');
  return measured.flatMap(({ path, statement: { at } }) => {
    if (at === undefined) return [];
    const names = Object.keys(at).filter((_, index, all) => all.length > 1 || index > 0);
    const places = [[...path, 'at'], ...names.map((name) => [...path, 'at', name])];
    return places.flatMap((place) => {
      const span = spanOfPair(profile, place) ?? spanOfFirstPair(profile, place);
      return span === null ? [] : textSlip('dropped condition', profile, path, span, '');
    });
  });
}

/** The key that opens a mapping in braces, with its value and the comma behind it. */
function spanOfFirstPair(
  { source: { text }, yaml }: AnyProfile,
  path: Path,
): readonly [number, number] | null {
  const { key, value } = placeAt(yaml, path) ?? {};
  if (!isNode(key) || !isNode(value) || !key.range || !value.range) return null;
  const comma = /^,\s*/.exec(text.slice(value.range[1]))?.[0];
  return comma === undefined ? null : [key.range[0], value.range[1] + comma.length];
}

function swappedPolymers(profile: AnyProfile, registry: Registry): Slip[] {
  if (profile.kind !== 'filament') return [];
  return [...registry.polymer.keys()].flatMap((symbol) =>
    scalarSlip('polymer swapped', profile, ['polymer'], symbol),
  );
}

function swappedNozzles(profile: AnyProfile, registry: Registry): Slip[] {
  const places =
    profile.kind === 'trial'
      ? profile.data.machine === undefined
        ? []
        : [{ path: ['nozzle'], machine: profile.data.machine }]
      : [...statementsOf(profile)]
          .filter(({ statement: { at } }) => at?.nozzle !== undefined)
          .map(({ path, statement: { at } }) => ({
            path: [...path, 'at', 'nozzle'],
            machine: at?.machine ?? profile.id,
          }));
  return places.flatMap(({ path, machine }) => {
    const data = registry.machine.get(machine)?.data;
    const ids = data === undefined ? [] : nozzleIds(data);
    return ids.flatMap((id) => scalarSlip('nozzle swapped', profile, path, id));
  });
}

function droppedFillers(profile: AnyProfile): Slip[] {
  if (profile.kind !== 'filament' || profile.data.designation === undefined) return [];
  const bare = profile.data.designation.replace(/-[A-Z]{2}\d+.*$/, '');
  return scalarSlip('filler dropped', profile, ['designation'], bare);
}
