import { shapes } from '../../src/registry/generated/shapes.ts';
import type { AnyProfile } from '../../src/registry/profile.ts';
import type { Registry } from '../../src/registry/registry.ts';
import { leavesOf, type Path } from '../../src/registry/shape.ts';
import { statementsOf } from '../../src/registry/statement.ts';
import type { RandomSource } from '../../src/statistics/random.ts';
import { spanOfPair } from './key-spans.ts';
import { type Slip, scalarSlip, textSlip } from './slip.ts';
import type { SlipKind } from './slip-kinds.ts';

/** Slips in what a value rests on: basis, source, evidence, conditions, dates. */
export function provenanceSlips(profile: AnyProfile, registry: Registry, random: RandomSource): Slip[] {
  return [
    ...basisSlips(profile),
    ...dropped('dropped source', 'source', profile),
    ...dropped('dropped evidence', 'evidence', profile),
    ...dropped('dropped interval', 'interval', profile),
    ...dropped('dropped digest', 'readings', profile),
    ...droppedConditions(profile),
    ...foreignConditions(profile, registry),
    ...foreignEvidence(profile, registry),
    ...foreignSources(profile, registry, random),
    ...danglingReferences(profile),
    ...dateSlips(profile),
  ];
}

/** The word for another basis, with all else as it stood. */
function basisSlips(profile: AnyProfile): Slip[] {
  const bases = ['measured', 'published', 'claimed', 'derived', 'assumed'];
  return [...statementsOf(profile)].flatMap(({ path, statement }) =>
    bases
      .filter((basis) => basis !== statement.basis && !isHarmless(basis, statement.source))
      .flatMap((basis) => scalarSlip('wrong basis word', profile, [...path, 'basis'], basis)),
  );
}

/** What is published may be called claimed or derived by whoever trusts it less: nothing in the file speaks against it. */
function isHarmless(basis: string, source: string | undefined): boolean {
  return source !== undefined && (basis === 'claimed' || basis === 'derived');
}

function dropped(
  kind: SlipKind,
  key: 'source' | 'evidence' | 'interval' | 'readings',
  profile: AnyProfile,
): Slip[] {
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

/** Each condition of a measured statement left out, and all of them. */
function droppedConditions(profile: AnyProfile): Slip[] {
  return measured(profile).flatMap(({ path, statement: { at } }) => {
    if (at === undefined) return [];
    const names = Object.keys(at);
    const places = [
      [...path, 'at'],
      ...names.filter(() => names.length > 1).map((name) => [...path, 'at', name]),
    ];
    return places.flatMap((place) => {
      const span = spanOfPair(profile, place);
      return span === null ? [] : textSlip('dropped condition', profile, path, span, '');
    });
  });
}

function measured(profile: AnyProfile) {
  return [...statementsOf(profile)].filter(({ statement }) => statement.basis === 'measured');
}

/** A nozzle, machine or temperature under a measured value that is not that of its trial. */
function foreignConditions(profile: AnyProfile, registry: Registry): Slip[] {
  return measured(profile).flatMap(({ path, statement: { at } }) => {
    if (at === undefined) return [];
    const place = (name: string) => [...path, 'at', name];
    const put = (name: string, values: readonly string[]) =>
      values.flatMap((value) => scalarSlip('condition of another trial', profile, place(name), value));
    return [
      ...(at.machine === undefined ? [] : put('machine', [...registry.machine.keys()])),
      ...(at.nozzle === undefined ? [] : put('nozzle', ['br-0.4', 'hs-0.4', 'hs-0.6', 'hs-0.8'])),
      ...(typeof at.nozzleTemperature === 'number'
        ? put('nozzleTemperature', [`${at.nozzleTemperature + 20} Cel`])
        : []),
    ];
  });
}

/** Trials of another pairing, or of another method. */
function foreignEvidence(profile: AnyProfile, registry: Registry): Slip[] {
  return measured(profile).flatMap(({ path, statement: { evidence } }) =>
    [...registry.trial.values()]
      .filter(({ id }) => id !== evidence)
      .flatMap(({ id }) => scalarSlip('evidence of another trial', profile, [...path, 'evidence'], id)),
  );
}

/** The sheet of another product left from the profile that was copied: of this maker, and of others. */
function foreignSources(profile: AnyProfile, registry: Registry, random: RandomSource): Slip[] {
  if (profile.kind !== 'filament' && profile.kind !== 'machine') return [];
  const own = profile.data.sheet;
  const sheets = [...registry.filament.values(), ...registry.machine.values()].flatMap(({ data }) =>
    data.sheet === undefined || data.sheet === own ? [] : [data.sheet],
  );
  const places = [...statementsOf(profile)]
    .filter(({ statement: { source } }) => source !== undefined)
    .map(({ path }): Path => [...path, 'source']);
  return [...places, ...(own === undefined ? [] : [['sheet']])].flatMap((path) => {
    const sheet = sheets[Math.floor(random.uniform() * sheets.length)];
    return sheet === undefined ? [] : scalarSlip('source of another product', profile, path, sheet);
  });
}

function danglingReferences(profile: AnyProfile): Slip[] {
  return leavesOf('reference', shapes[profile.kind], profile.written)
    .filter(({ value }) => typeof value === 'string')
    .flatMap(({ path, value }) => scalarSlip('dangling reference', profile, path, `${String(value)}x`));
}

/** Dates of measurements and notes; those of a source say when it was issued and read. */
function dateSlips(profile: AnyProfile): Slip[] {
  const dates = leavesOf('date', shapes[profile.kind], profile.written).filter(
    ({ value }) => typeof value === 'string',
  );
  const inYear = (kind: SlipKind, move: number) =>
    dates.flatMap(({ path, value }) => {
      const [year = '', ...rest] = String(value).split('-');
      return scalarSlip(kind, profile, path, [String(Number(year) + move), ...rest].join('-'));
    });
  return [
    ...inYear('date in the future', 10),
    ...inYear('date of another year', -1),
    ...(profile.kind === 'source' ? sourceOrder(profile) : []),
  ];
}

function sourceOrder(profile: Extract<AnyProfile, { kind: 'source' }>): Slip[] {
  const { text } = profile.source;
  const end = text.length;
  const line = 'accessed: {date-parts: [[1802, 3, 1]]}\n';
  if (text.includes('\naccessed:') || !text.includes('\nissued:')) return [];
  return textSlip('source read before it was issued', profile, ['accessed'], [end, end], line);
}
