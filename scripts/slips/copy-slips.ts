import { nozzleIds } from '../../src/registry/nozzle.ts';
import type { AnyProfile, Profile } from '../../src/registry/profile.ts';
import type { Registry } from '../../src/registry/registry.ts';
import type { RandomSource } from '../../src/statistics/random.ts';
import { rangeAt, type Slip, type Stage, scalarSlip } from './slip.ts';
import { writtenReadings } from './written-readings.ts';

/** Slips of copying: files under new names, and blocks from the file of another product. */
export function copySlips(profile: AnyProfile, registry: Registry, random: RandomSource): Slip[] {
  return [
    ...pastedFile(profile),
    ...(profile.kind === 'trial' ? copiedTrials(profile, registry, random) : []),
    ...(profile.kind === 'filament'
      ? [
          ...pastedBlocks(profile, registry),
          ...exchangedPolymers(profile, registry),
          ...droppedFillers(profile),
        ]
      : []),
    ...exchangedNozzles(profile, registry),
  ];
}

/** The copy of a file that still has the id of the original. */
function pastedFile({ source: { relativePath, text }, id }: AnyProfile): Slip[] {
  const file = relativePath.replace(/\.ya?ml$/, '-copy.yaml');
  const edits = new Map([[file, text]]);
  return [
    {
      kind: 'pasted file with its old id',
      file,
      pointer: '/id',
      before: '',
      after: id,
      edits,
      words: ['same id'],
    },
  ];
}

/** The readings of a trial again under a new id, for another pairing: all of them, most of them, or with one changed. */
function copiedTrials(trial: Profile<'trial'>, registry: Registry, random: RandomSource): Slip[] {
  const readings = writtenReadings(trial);
  if (readings === null) return [];
  const { rows } = readings;
  const changed = Math.floor(random.uniform() * rows.length);
  const forms = [
    rows,
    rows.slice(0, Math.max(5, rows.length - 2)),
    rows.map((row, index) => (index === changed ? nudged(row) : row)),
  ];
  return otherPairings(trial, registry).flatMap((pairing, index) => {
    const form = forms[index % forms.length] ?? rows;
    const stage: Stage = random.uniform() < 0.5 ? 'nothingAdopted' : 'adoptedFromThem';
    const id = `${trial.id}-${index + 2}`;
    const file = trial.source.relativePath.replace(trial.id, id);
    const inSheet = readings.file.endsWith('.csv');
    const body = (inSheet ? trial.source.text : readings.withRows(form)).replaceAll(trial.id, id);
    const text = pairing.reduce(
      (now, [key, value]) => now.replace(new RegExp(`^${key}: .*$`, 'm'), `${key}: ${value}`),
      body,
    );
    const sheet: readonly [string, string][] = inSheet
      ? [[readings.file.replace(trial.id, id), readings.withRows(form)]]
      : [];
    return [
      {
        kind: 'copied trial' as const,
        ...{
          file,
          pointer: '/observations',
          before: trial.id,
          after: pairing.map((each) => each.join(' ')).join(', '),
        },
        ...{ edits: new Map([[file, text], ...sheet]), adoption: { trial: id, stage, isNew: true } as const },
        // Without a batch of its own it is told as one batch of two filaments.
        words: [trial.id, id, `The batch ${trial.data.batch}`],
      },
    ];
  });
}

function nudged(row: readonly string[]): readonly string[] {
  const last = row.at(-1) ?? '';
  const decimals = last.split('.')[1]?.length ?? 0;
  return row.with(-1, (Number(last) + 10 ** -decimals).toFixed(decimals));
}

type Pairing = readonly (readonly [key: string, value: string])[];

/** Other nozzles of the machine, other filaments of the diameter, and another batch of the same. */
function otherPairings({ data }: Profile<'trial'>, registry: Registry): Pairing[] {
  const own = registry.filament.get(data.filament)?.data;
  const machine = data.machine === undefined ? undefined : registry.machine.get(data.machine)?.data;
  const nozzles = machine === undefined || data.nozzle === undefined ? [] : nozzleIds(machine);
  const filaments = [...registry.filament.values()].filter(
    (other) => other.data.diameter === own?.diameter && other.id !== data.filament,
  );
  return [
    ...nozzles.filter((id) => id !== data.nozzle).map((id): Pairing => [['nozzle', id]]),
    ...filaments.map(({ id }): Pairing => [['filament', id]]),
    ...filaments.map(
      ({ id }): Pairing => [
        ['filament', id],
        ['batch', 'K-0001'],
      ],
    ),
  ];
}

const temperatureKeys = ['nozzleTemperature', 'bedTemperature', 'chamberTemperature'];
const dryingKeys = ['dryingTemperature', 'dryingTime'];

/** Blocks as they are copied: one key at a time, and what stands together in a sheet. */
const singles = ['density', 'softening', ...temperatureKeys, 'dryingTemperature', 'fan'];
const groups = [
  temperatureKeys,
  dryingKeys,
  [...temperatureKeys, ...dryingKeys],
  ['density', 'softening', ...temperatureKeys, ...dryingKeys],
  ['density', 'softening'],
];

/** Values of a filament of another family under the filament's own source, as they are read off the wrong sheet. */
function pastedBlocks(filament: Profile<'filament'>, registry: Registry): Slip[] {
  const others = [...registry.filament.values()].filter(({ data }) => data.polymer !== filament.data.polymer);
  return others.flatMap((other) => [
    ...singles.flatMap((key) => pasted('block of another filament, one key', filament, other, [key])),
    ...groups.flatMap((keys) => pasted('block of another filament, several', filament, other, keys)),
  ]);
}

function pasted(
  kind: 'block of another filament, one key' | 'block of another filament, several',
  filament: Profile<'filament'>,
  other: Profile<'filament'>,
  keys: readonly string[],
): Slip[] {
  const swaps = keys.flatMap((key) => {
    const place = rangeAt(filament, [key, 0, 'value']);
    const from = rangeAt(other, [key, 0, 'value']);
    return place === null || from === null
      ? []
      : [{ key, place, after: other.source.text.slice(from[0], from[1]) }];
  });
  const { text, relativePath: file } = filament.source;
  const changing = swaps.filter(({ place, after }) => text.slice(place[0], place[1]) !== after);
  const [first] = changing;
  if (first === undefined || changing.length < Math.min(2, keys.length)) return [];
  const edited = changing
    .toSorted((a, b) => b.place[0] - a.place[0])
    .reduce((now, { place, after }) => now.slice(0, place[0]) + after + now.slice(place[1]), text);
  return [
    {
      ...{ kind, file, pointer: `/${first.key}`, edits: new Map([[file, edited]]) },
      also: changing.map(({ key }) => `/${key}`),
      before: filament.id,
      after: `${changing.map(({ key, after }) => `${key} ${after}`).join(', ')} of ${other.id}`,
      words: changing.flatMap(({ key, after }) => [
        key,
        after,
        key.replaceAll(/[A-Z]/g, (big) => ` ${big.toLowerCase()}`),
      ]),
    },
  ];
}

function exchangedPolymers(filament: Profile<'filament'>, registry: Registry): Slip[] {
  return [...registry.polymer.keys()].flatMap((symbol) =>
    scalarSlip('polymer exchanged', filament, ['polymer'], symbol),
  );
}

function droppedFillers(filament: Profile<'filament'>): Slip[] {
  const { designation } = filament.data;
  if (designation === undefined) return [];
  return scalarSlip('filler dropped', filament, ['designation'], designation.replace(/-[A-Z]{2}\d+.*$/, ''));
}

/** Other nozzles of the machine in a trial. */
function exchangedNozzles(profile: AnyProfile, registry: Registry): Slip[] {
  if (profile.kind !== 'trial' || profile.data.machine === undefined) return [];
  const machine = registry.machine.get(profile.data.machine)?.data;
  const ids = machine === undefined ? [] : nozzleIds(machine);
  return ids.flatMap((id) => scalarSlip('nozzle exchanged', profile, ['nozzle'], id));
}
