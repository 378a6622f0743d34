import type { Polymer } from '../registry/generated/documents.ts';
import type { AnyProfile } from '../registry/profile.ts';
import type { Registry } from '../registry/registry.ts';
import type { Path } from '../registry/shape.ts';
import { stated } from '../registry/stated.ts';
import { type Conditions, statementsOf } from '../registry/statement.ts';
import type { Range } from '../units/canonical.ts';
import { familiesOf, isFoamed } from './families.ts';
import { isNozzleTemperature } from './nozzle-temperature-figure.ts';
import { restsOnTrial } from './rests-on-trial.ts';

/** A nozzle temperature, or a window of them, that is stated for a known material. */
interface NozzleTemperaturePlace {
  readonly path: Path;
  readonly range: Range;
  readonly families: readonly Polymer[];
  /** Whether the material holds fillers. */
  readonly filled: boolean;
  /** Whether the material is foamed, or foams in the nozzle. */
  readonly foamed: boolean;
}

/**
 * Every nozzle temperature of a profile that belongs to a material: windows, first layers, conditions of statements
 * and of trials. A measured value is left to its trial, so that one slip gives one finding.
 */
export function nozzleTemperatures(profile: AnyProfile, registry: Registry): NozzleTemperaturePlace[] {
  return [...placesOf(profile, registry)].filter(
    ({ range }) => isNozzleTemperature(range.low) && isNozzleTemperature(range.high),
  );
}

function* placesOf(profile: AnyProfile, registry: Registry): Generator<NozzleTemperaturePlace> {
  if (profile.kind === 'filament') {
    const material = materialOf({ filament: profile.id }, registry);
    if (material === null) return;
    for (const { path, value } of stated(profile.data.nozzleTemperature, ['nozzleTemperature']))
      yield { path, range: value, ...material };
    const firstLayer = ['firstLayerNozzleTemperature'];
    for (const { path, value } of stated(profile.data.firstLayerNozzleTemperature, firstLayer))
      yield { path, range: pointRange(value), ...material };
  }
  if (profile.kind === 'trial') {
    const material = materialOf({ filament: profile.data.filament }, registry);
    const { nozzleTemperature } = profile.data.conditions;
    if (material === null || nozzleTemperature === undefined) return;
    const range = pointRange(nozzleTemperature);
    yield { path: ['conditions', 'nozzleTemperature'], range, ...material };
  } else yield* conditionsOf(profile, registry);
}

function* conditionsOf(profile: AnyProfile, registry: Registry): Generator<NozzleTemperaturePlace> {
  const own: Conditions = profile.kind === 'filament' ? { filament: profile.id } : {};
  for (const { path, statement } of statementsOf(profile)) {
    const temperature = statement.at?.nozzleTemperature;
    if (temperature === undefined || restsOnTrial(statement, registry)) continue;
    const material = materialOf({ ...own, ...statement.at }, registry);
    if (material === null) continue;
    yield { path: [...path, 'at', 'nozzleTemperature'], range: pointRange(temperature), ...material };
  }
}

function materialOf(
  { filament: id, polymer }: Conditions,
  registry: Registry,
): Pick<NozzleTemperaturePlace, 'families' | 'filled' | 'foamed'> | null {
  const filament = id === undefined ? undefined : registry.filament.get(id)?.data;
  const family = polymer === undefined ? undefined : registry.polymer.get(polymer)?.data;
  const families =
    filament === undefined ? [family].filter((one) => one !== undefined) : familiesOf(filament, registry);
  // Of a family as a whole nobody knows whether the grade is filled.
  return families.length === 0
    ? null
    : {
        families,
        filled: filament?.fillers !== undefined || filament === undefined,
        foamed: filament !== undefined && isFoamed(filament),
      };
}

function pointRange(value: number): Range {
  return { low: value, high: value };
}
