import { type FittedNozzle, nozzlesOf } from '../../registry/nozzle.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import { chooseStatement } from '../../registry/statement.ts';
import type { Money, Range } from '../../units/canonical.ts';

/** What the script of the catalogue knows of the registry from the start; quantities in canonical units. */
export interface CatalogueData {
  /** House rules under which pairings have pages. */
  readonly policies: readonly string[];
  readonly machines: readonly CatalogueMachine[];
  readonly filaments: readonly CatalogueFilament[];
}

export interface CatalogueMachine {
  readonly id: string;
  readonly name: string;
  readonly chamber: { readonly enclosed: boolean; readonly heated: boolean };
  /** dB(A); null where it is not known. */
  readonly noise: number | null;
  /** Null where it is not known. */
  readonly price: Money | null;
  readonly nozzles: readonly CatalogueNozzle[];
}

export interface CatalogueNozzle {
  readonly id: string;
  readonly diameter: number;
  readonly material: string;
  /** Diameter of the filament that its hot end takes. */
  readonly feeds: number;
  /** Melt flows that are stated for whatever filament of a polymer. */
  readonly claims: readonly FamilyClaim[];
}

/** A melt flow that is stated for no filament in particular; a polymer or a temperature that it does not name is null. */
export interface FamilyClaim {
  readonly flow: number;
  readonly polymer: string | null;
  readonly temperature: number | null;
}

export interface CatalogueFilament {
  readonly id: string;
  readonly name: string;
  readonly polymer: string;
  readonly diameter: number;
  /** Nozzle temperatures at which it is to be printed; null where they are not known. */
  readonly window: Range | null;
}

export function catalogueData(registry: Registry, policies: readonly string[]): CatalogueData {
  return {
    policies,
    machines: [...registry.machine.values()].map(machineData),
    filaments: [...registry.filament.values()].map(({ id, data }) => ({
      id,
      name: data.name,
      polymer: data.polymer,
      diameter: data.diameter,
      window: chooseStatement(data.nozzleTemperature, {})?.value ?? null,
    })),
  };
}

function machineData({ id, data }: Profile<'machine'>): CatalogueMachine {
  const { enclosed, heated } = data.chamber;
  return {
    id,
    name: data.name,
    chamber: { enclosed, heated },
    noise: chooseStatement(data.soundLevel, {})?.value ?? null,
    price: chooseStatement(data.price, {})?.value ?? null,
    nozzles: nozzlesOf(data).map(nozzleData),
  };
}

function nozzleData({ hotEnd, nozzle }: FittedNozzle): CatalogueNozzle {
  const claims = (hotEnd.meltFlow ?? []).flatMap(({ value, at = {} }): FamilyClaim[] =>
    at.filament === undefined && (at.nozzle ?? nozzle.id) === nozzle.id
      ? [{ flow: value, polymer: at.polymer ?? null, temperature: at.nozzleTemperature ?? null }]
      : [],
  );
  const { id, diameter, material } = nozzle;
  return { id, diameter, material, feeds: hotEnd.filamentDiameter, claims };
}
