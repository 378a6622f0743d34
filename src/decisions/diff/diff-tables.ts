import { additionsTo, extended } from '../../registry/addition.ts';
import { compareText } from '../../registry/finding.ts';
import { nozzleIds } from '../../registry/nozzle.ts';
import type { AnyProfile, Profile } from '../../registry/profile.ts';
import { asWritten, type Registry } from '../../registry/registry.ts';
import { deriveTables } from '../../tables/derive/derive-tables.ts';
import type { SpeedRow, SpeedTable } from '../../tables/derive/speed-table.ts';
import { type SettingMove, settingMoves } from './setting-moves.ts';
import type { TableName } from './table-name.ts';

/** A cell of a table that is not what it was; null where there was or is none. */
export interface CellMove extends TableName {
  readonly base: SpeedRow | null;
  readonly head: SpeedRow | null;
}

/** How the tables of two states of a registry differ. */
export interface TablesDiff {
  /** Tables that can be derived now and could not before. */
  readonly added: readonly TableName[];
  /** Tables that could be derived before and cannot any more. */
  readonly removed: readonly TableName[];
  /** Cells that differ in tables that both sides have: those that are slower first, and of each those that move most. */
  readonly moves: readonly CellMove[];
  /** Temperatures, cooling, drying and spools that differ in them. */
  readonly settings: readonly SettingMove[];
}

/** What becomes of the tables of all pairings of which a part is among some profiles. */
export function diffTables(
  base: Registry,
  head: Registry,
  touches: (name: TableName) => boolean,
): TablesDiff {
  const names = new Map(
    [...tableNames(base), ...tableNames(head)].filter(touches).map((name) => [tableKey(name), name]),
  );
  const added: TableName[] = [];
  const removed: TableName[] = [];
  const moves: CellMove[] = [];
  const settings: SettingMove[] = [];
  for (const [, name] of [...names].sort(([a], [b]) => compareText(a, b))) {
    const [before, after] = [tableOf(base, name), tableOf(head, name)];
    if (before === null && after !== null) added.push(name);
    if (before !== null && after === null) removed.push(name);
    if (before === null || after === null) continue;
    moves.push(...movesBetween(name, rowsOf(before), rowsOf(after)));
    settings.push(...settingMoves(name, before.conditions, after.conditions));
  }
  return { added, removed, moves: moves.sort(byGravity), settings };
}

/** Whether a table that was made by the base would be too fast somewhere, or is gone. */
export function hasFallen({ removed, moves }: TablesDiff): boolean {
  return removed.length > 0 || moves.some(isFall);
}

/** Whether any table says something else than it did, or has come. */
export function hasMoved({ added, removed, moves, settings }: TablesDiff): boolean {
  return [added, removed, moves, settings].some((list) => list.length > 0);
}

/** Whether a cell is slower than it was, accelerates less, or is gone. */
export function isFall({ base, head }: CellMove): boolean {
  if (base === null || head === null) return head === null;
  return head.speed < base.speed || head.acceleration < base.acceleration;
}

/** A registry in which one profile is replaced by another version of it, as it stands in its file. */
export function withProfile(registry: Registry, profile: AnyProfile): Registry {
  const replace = <OfKind extends AnyProfile>(
    map: ReadonlyMap<string, OfKind>,
    version: OfKind,
  ): ReadonlyMap<string, OfKind> => new Map(map).set(version.id, version);
  if (profile.kind === 'machine') return { ...registry, machine: replace(registry.machine, profile) };
  if (profile.kind === 'filament') return withFilament(registry, profile);
  if (profile.kind === 'addition') {
    const changed = { ...registry, addition: replace(registry.addition, profile) };
    const filament = asWritten(registry, 'filament', profile.data.filament);
    return filament?.kind === 'filament' ? withFilament(changed, filament) : changed;
  }
  if (profile.kind === 'polymer') return { ...registry, polymer: replace(registry.polymer, profile) };
  return profile.kind === 'policy' ? { ...registry, policy: replace(registry.policy, profile) } : registry;
}

function withFilament(registry: Registry, written: Profile<'filament'>): Registry {
  const whole = extended(written, additionsTo(written.id, registry.addition));
  return { ...registry, filament: new Map(registry.filament).set(written.id, whole) };
}

function* tableNames({ machine, filament, policy }: Registry): Generator<TableName> {
  for (const { id: machineId, data } of machine.values()) {
    for (const nozzle of nozzleIds(data)) {
      for (const filamentId of filament.keys()) {
        for (const policyId of policy.keys())
          yield { machine: machineId, nozzle, filament: filamentId, policy: policyId };
      }
    }
  }
}

function tableKey({ machine, nozzle, filament, policy }: TableName): string {
  return [machine, nozzle, filament, policy].join(' ');
}

/** A table, or null where it cannot be derived. */
function tableOf(registry: Registry, name: TableName): SpeedTable | null {
  const { machine, policy } = name;
  if (!registry.machine.has(machine) || !registry.policy.has(policy)) return null;
  const table = deriveTables(registry, name, { judgesEvidence: false });
  return table.ok ? table.value : null;
}

function rowsOf({ rows }: SpeedTable): ReadonlyMap<string, SpeedRow> {
  return new Map(rows.map((row) => [cellKey(row), row]));
}

function cellKey({ feature, layerHeight, lineWidth }: SpeedRow): string {
  return [feature, layerHeight, lineWidth].join(' ');
}

function movesBetween(
  name: TableName,
  before: ReadonlyMap<string, SpeedRow>,
  after: ReadonlyMap<string, SpeedRow>,
): CellMove[] {
  const cells = new Set([...before.keys(), ...after.keys()]);
  return [...cells].flatMap((cell) => {
    const [base, head] = [before.get(cell) ?? null, after.get(cell) ?? null];
    return isSameRow(base, head) ? [] : [{ ...name, base, head }];
  });
}

function isSameRow(a: SpeedRow | null, b: SpeedRow | null): boolean {
  if (a === null || b === null) return a === b;
  return (
    a.speed === b.speed &&
    a.flow === b.flow &&
    a.acceleration === b.acceleration &&
    a.nozzleTemperature === b.nozzleTemperature &&
    a.bound === b.bound
  );
}

function byGravity(a: CellMove, b: CellMove): number {
  return Number(isFall(b)) - Number(isFall(a)) || sizeOf(b) - sizeOf(a);
}

/** Share of its speed by which a cell moves; one that comes or goes moves by all of it. */
function sizeOf({ base, head }: CellMove): number {
  return base === null || head === null ? 1 : Math.abs(head.speed / base.speed - 1);
}
