import { standingOf } from '../evidence/standing.ts';
import { isSimulated, originOf } from '../knowledge/origin.ts';
import { addedPlace, additionsTo } from '../registry/addition.ts';
import { labelIn } from '../registry/facts-of-key.ts';
import type { Statement } from '../registry/generated/documents.ts';
import { shapes } from '../registry/generated/shapes.ts';
import type { AnyProfile } from '../registry/profile.ts';
import { asWritten, type Registry } from '../registry/registry.ts';
import { isObject, type Path, shapeAt, toPointer } from '../registry/shape.ts';
import { type PlacedStatement, statementsOf } from '../registry/statement.ts';
import { locate } from '../registry/yaml/yaml-document.ts';
import type { Dimension } from '../units/dimension.ts';
import { dimensionInfo } from '../units/dimension.ts';
import { day, figure, flag, quantity, whole, words } from './column.ts';
import { type ExportedRow, type ExportSource, type ExportTable, refersTo, rowOf } from './export-table.ts';

interface ExportedLimit {
  readonly profile: AnyProfile;
  readonly path: Path;
  readonly statement: Statement<unknown>;
  readonly dimension: Dimension;
  /** The file that states it, which for a limit of an addition is another one than that of the filament. */
  readonly written: AnyProfile;
  readonly line: number;
  readonly isSimulated: boolean;
  readonly isInvented: boolean;
  /** Codes of what is wrong with its evidence. */
  readonly faults: readonly string[];
}

type At = NonNullable<Statement<unknown>['at']>;
type Said = Omit<Statement<unknown>, 'value' | 'interval' | 'at' | 'date' | 'fromMemory'>;

const said = (name: string, description: string, cell: (statement: Said) => string | undefined) =>
  words<ExportedLimit>(name, description, ({ statement }) => cell(statement));
const at = (name: string, description: string, cell: (conditions: At) => string | undefined) =>
  words<ExportedLimit>(name, description, ({ statement }) => cell(statement.at ?? {}));

/** One row per statement: a value with its provenance. */
export const limitsTable: ExportTable<ExportedLimit> = {
  name: 'limits',
  title: 'Limits and other stated values',
  description:
    'One row per value that a machine, a filament or a polymer family states with its provenance: measured, published, derived, claimed or assumed. Numbers are in the unit of the row.',
  primaryKey: ['limit_id'],
  foreignKeys: [refersTo('trials', 'trial_id'), refersTo('sources', 'source_id')],
  columns: [
    words(
      'limit_id',
      'Kind, id and JSON pointer of the value: what `sourcedValues` of the JSON tables calls it too',
      ({ profile, path }) => limitId(profile, path),
    ),
    words('kind', 'Kind of profile: machine, filament or polymer', ({ profile }) => profile.kind),
    words('profile_id', 'Id of the profile', ({ profile }) => profile.id),
    words('profile_version', 'Version of the file that states it', ({ written }) => versionOf(written)),
    words('property', 'Key of the value, such as meltFlow', ({ path }) => propertyOf(path)),
    words('label', 'The same in words, with the part that it belongs to', ({ profile, path }) =>
      labelIn(profile, path.slice(0, -1)),
    ),
    figure(
      'value',
      'The value; empty where a range is stated',
      ({ statement }) => ends(statement.value).value,
    ),
    figure('value_low', 'Lower end of a range', ({ statement }) => ends(statement.value).low),
    figure('value_high', 'Upper end of a range', ({ statement }) => ends(statement.value).high),
    figure(
      'interval_low',
      'Lower end of the 95 % coverage interval',
      ({ statement }) => statement.interval?.low,
    ),
    figure('interval_high', 'Upper end of it', ({ statement }) => statement.interval?.high),
    words('unit', 'UCUM code of the unit; of a price the currency', unitOf),
    said('basis', 'measured, published, derived, claimed or assumed', ({ basis }) => basis),
    said('source_id', 'Source that states it', ({ source }) => source),
    said('locator', 'Where in the source it stands', ({ locator }) => locator),
    flag(
      'is_from_memory',
      'Whether the figure is remembered, and still to be looked up',
      ({ statement }) => statement.fromMemory === true,
    ),
    said('trial_id', 'Trial whose readings show it', ({ evidence }) => evidence),
    said(
      'readings_digest',
      'Digest of the readings that it was adopted from; another one at the trial: they have changed',
      ({ readings }) => readings,
    ),
    said(
      'reason',
      'Why it is assumed, how it was derived, or why it is kept on the safe side',
      ({ reason }) => reason,
    ),
    said('note', 'More about it', ({ note }) => note),
    day('date', 'Day on which it was measured or read', ({ statement }) => statement.date),
    at('at_machine_id', 'Holds on this machine', ({ machine }) => machine),
    at('at_nozzle_id', 'Holds with this nozzle', ({ nozzle }) => nozzle),
    at('at_filament_id', 'Holds with this filament', ({ filament }) => filament),
    at('at_polymer_id', 'Holds with filaments of this family', ({ polymer }) => polymer),
    at('at_batch', 'Holds with this batch', ({ batch }) => batch),
    quantity(
      'atNozzleTemperature',
      'temperature',
      'holds at this nozzle temperature',
      ({ statement }) => statement.at?.nozzleTemperature,
    ),
    quantity(
      'atLayerHeight',
      'length',
      'holds at this layer height',
      ({ statement }) => statement.at?.layerHeight,
    ),
    quantity(
      'atAcceleration',
      'acceleration',
      'holds at this acceleration',
      ({ statement }) => statement.at?.acceleration,
    ),
    words(
      'faults',
      'What is wrong with its evidence today, words separated by a space: missing, unsupported, otherConditions, stale; acknowledged behind one that a reviewer accepts; empty where nothing is',
      ({ faults }) => faults.join(' ') || null,
    ),
    flag('is_simulated', 'Whether it rests on readings that no bench has read', (limit) => limit.isSimulated),
    flag('is_invented', 'Whether its profile is invented', (limit) => limit.isInvented),
    words('file', 'File that states it', ({ written }) => written.source.relativePath),
    whole('line', 'Line in that file', ({ line }) => line),
    words('file_sha256', 'SHA-256 of that file with LF line ends', ({ written }) => written.source.digest),
  ],
};

/** What a value is called: that of a table's sourced value of the same number. */
function limitId({ kind, id }: AnyProfile, path: Path): string {
  return `${kind} ${id} ${toPointer([...path, 'value'])}`;
}

function propertyOf(path: Path): string {
  return String(path.findLast((step) => typeof step === 'string') ?? '');
}

/** A number, or the ends of a range; of money the amount. */
function ends(value: unknown): { value?: number; low?: number; high?: number } {
  if (typeof value === 'number') return { value };
  if (!isObject(value)) return {};
  const { amount, low, high } = value;
  if (typeof amount === 'number') return { value: amount };
  return typeof low === 'number' && typeof high === 'number' ? { low, high } : {};
}

function unitOf({ dimension, statement: { value } }: ExportedLimit): string | undefined {
  const currency = isObject(value) ? value.currency : undefined;
  return typeof currency === 'string' ? currency : dimensionInfo[dimension].canonicalUnit;
}

function versionOf({ data }: AnyProfile): string | null {
  return 'version' in data ? data.version : null;
}

/** The statements of machines, filaments with their additions, and families, each kind in the order of its files. */
export function* limitRows(source: ExportSource): Generator<ExportedRow> {
  const { machine, filament, polymer } = source.registry;
  for (const profile of [...machine.values(), ...filament.values(), ...polymer.values()]) {
    const [invented] = originOf(source.registry, { profiles: [profile] }).invented;
    for (const placed of statementsOf(profile)) {
      const shape = shapeAt(shapes[profile.kind], [...placed.path, 'value']);
      if (shape?.type !== 'quantity') continue;
      yield rowOf(limitsTable, {
        ...{ profile, path: placed.path, statement: placed.statement, dimension: shape.dimension },
        ...placeOf(source.registry, profile, placed.path),
        isSimulated: isSimulated(placed.statement, source.registry),
        isInvented: invented !== undefined,
        faults: faultsOf(source, profile, placed),
      });
    }
  }
}

function faultsOf(
  source: ExportSource,
  profile: AnyProfile,
  placed: PlacedStatement<Statement<unknown>>,
): string[] {
  if (placed.statement.basis !== 'measured') return [];
  const { faults } = standingOf(profile, placed, source);
  return [
    ...new Set(
      faults.flatMap(({ code, acknowledged }) => (acknowledged === null ? [code] : [code, 'acknowledged'])),
    ),
  ];
}

/** The file that a statement stands in, and the line of its value. */
function placeOf(
  registry: Registry,
  profile: AnyProfile,
  path: Path,
): Pick<ExportedLimit, 'written' | 'line'> {
  const own = profile.kind === 'filament' ? asWritten(registry, 'filament', profile.id) : undefined;
  const added =
    own?.kind === 'filament' ? addedPlace(path, own, additionsTo(own.id, registry.addition)) : null;
  const written: AnyProfile = added?.addition ?? profile;
  const inFile = written.originalPath([...(added?.path ?? path), 'value']);
  return { written, line: locate(written.yaml, inFile, 'value').line };
}
