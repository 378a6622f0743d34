import type { Filament, Machine, Polymer } from '../registry/generated/documents.ts';
import type { Blame } from '../registry/hit.ts';
import { findNozzle, type HotEnd } from '../registry/nozzle.ts';
import type { AnyProfile } from '../registry/profile.ts';
import type { Registry } from '../registry/registry.ts';
import { type Stated, stated } from '../registry/stated.ts';
import type { CubicMillimetresPerSecond, DegreesCelsius } from '../units/canonical.ts';
import { familiesOf } from './families.ts';

/** A flow that a hot end is said to deliver, with what is known of the conditions. */
export interface FlowLimit extends Stated<CubicMillimetresPerSecond> {
  readonly machine: Machine;
  readonly hotEnd: HotEnd;
  readonly filament: Filament | null;
  /** Families of the material; none where it is not named or not known. */
  readonly families: readonly Polymer[];
  readonly nozzleTemperature: DegreesCelsius | null;
}

/** Every flow limit of a machine or a filament whose hot end is known, supported by its trial or not. */
export function statedFlowLimits(profile: AnyProfile, registry: Registry): FlowLimit[] {
  if (profile.kind === 'machine') return limitsOfMachine(profile.data, registry);
  return profile.kind === 'filament' ? limitsOfFilament(profile.data, registry) : [];
}

function limitsOfMachine(machine: Machine, registry: Registry): FlowLimit[] {
  return machine.hotEnds.flatMap((hotEnd, index) =>
    stated(hotEnd.meltFlow, ['hotEnds', index, 'meltFlow']).map((limit) => {
      return { ...limit, machine, hotEnd, ...materialOf(limit, registry) };
    }),
  );
}

function limitsOfFilament(filament: Filament, registry: Registry): FlowLimit[] {
  return stated(filament.meltFlow, ['meltFlow']).flatMap((limit) => {
    const { machine: id, nozzle } = limit.statement.at ?? {};
    const machine = id === undefined ? undefined : registry.machine.get(id)?.data;
    const fitted = machine && nozzle !== undefined ? findNozzle(machine, nozzle) : null;
    if (machine === undefined || fitted === null) return [];
    return [{ ...limit, machine, hotEnd: fitted.hotEnd, ...materialOf(limit, registry, filament) }];
  });
}

function materialOf(
  { statement: { at = {} } }: Stated<number>,
  registry: Registry,
  own?: Filament,
): Pick<FlowLimit, 'filament' | 'families' | 'nozzleTemperature'> {
  const filament = own ?? (at.filament === undefined ? undefined : registry.filament.get(at.filament)?.data);
  const family = at.polymer === undefined ? undefined : registry.polymer.get(at.polymer)?.data;
  const named = family === undefined ? [] : [family];
  return {
    filament: filament ?? null,
    families: filament === undefined ? named : familiesOf(filament, registry),
    nozzleTemperature: at.nozzleTemperature ?? null,
  };
}

/** A figure of the hot end that a flow limit is compared with. */
export function blamedAtHotEnd(
  { machine, hotEnd }: Pick<FlowLimit, 'machine' | 'hotEnd'>,
  key: keyof HotEnd,
): Blame[] {
  const index = machine.hotEnds.indexOf(hotEnd);
  return [{ of: { kind: 'machine', id: machine.id }, path: ['hotEnds', index, key] }];
}
