import { familiesOf } from '../../../knowledge/families.ts';
import { conditionsOf, type Pairing } from '../../../knowledge/pairing.ts';
import { type Traction, tractionOf } from '../../../knowledge/traction.ts';
import type { Polymer, Statement } from '../../../registry/generated/documents.ts';
import type { Profile } from '../../../registry/profile.ts';
import type { Registry } from '../../../registry/registry.ts';
import { type Basis, chooseLimit, weakerBasis } from '../../../registry/statement.ts';
import type { CubicMillimetresPerSecond, DegreesCelsius, Range } from '../../../units/canonical.ts';
import { rounded } from '../../../units/rounded.ts';
import { shown } from '../../../units/wording.ts';
import { nozzleDiameterOf } from '../beads.ts';
import { sourcedTerm, type Term } from '../calculation.ts';
import { type SourcedValue, sourcedQuantity, sourcedStatement } from '../sourced-value.ts';

/** The most melt that the drive of a pairing pushes through its nozzle, and how that follows. */
export interface TractionLimit {
  readonly flow: CubicMillimetresPerSecond;
  readonly basis: Basis;
  readonly formula: string;
  readonly terms: readonly Term[];
  /** The melt zone, from whose length the temperature of the melt follows. */
  readonly fittedTo: readonly SourcedValue[];
}

/** What the drive of a pairing pushes at a nozzle temperature; null where no drive force or no viscosity is known. */
export function tractionLimit(
  registry: Registry,
  pairing: Pairing,
  nozzleTemperature: DegreesCelsius,
): TractionLimit | null {
  const { machine, hotEnd, nozzle, filament } = pairing;
  const drive = chooseLimit(hotEnd.driveForce, conditionsOf(pairing), 'below');
  const zone = chooseLimit(hotEnd.meltZoneLength, conditionsOf(pairing), 'below');
  const families = familiesOf(filament.data, registry);
  const thinnest = lowestOf(registry, families, 'meltViscosity', ({ low }) => low);
  if (drive === null || thinnest === null) return null;
  const traction = tractionOf({
    force: drive.value,
    filament: filament.data,
    families,
    nozzleDiameter: nozzle.diameter,
    nozzleTemperature,
    meltZoneLength: zone?.value ?? null,
  });
  if (traction === null) return null;
  const strongest = lowestOf(registry, families, 'compressiveYield', ({ high }) => -high);
  const stated = [thinnest.statement, strongest?.statement, zone].filter((each) => each != null);
  const { diameter } = filament.data;
  const pushed = 'F / (pi * d^2 / 4)';
  return {
    flow: traction.flow,
    basis: stated.reduce((basis, each) => weakerBasis(basis, each.basis), drive.basis),
    formula: `pi * D^3 * ${strongest === null ? `(${pushed})` : `min(${pushed}, s)`} / (128 * e * k)`,
    terms: [
      sourcedTerm('D', nozzleDiameterOf(pairing), nozzle.diameter),
      sourcedTerm('F', sourcedStatement(machine, drive), drive.value),
      sourcedTerm('d', sourcedQuantity(filament, ['diameter'], diameter), diameter),
      ...(strongest === null ? [] : [familyTerm('s', strongest, ({ high }) => high)]),
      familyTerm('e', thinnest, ({ low }) => low),
      thickeningTerm(traction),
    ],
    fittedTo: zone === null ? [] : [sourcedStatement(machine, zone)],
  };
}

/** That a drive force is stated, but not how viscous the melt is. */
export function tractionWarnings(registry: Registry, { hotEnd, filament }: Pairing): string[] {
  const families = familiesOf(filament.data, registry);
  const isKnown = lowestOf(registry, families, 'meltViscosity', ({ low }) => low) !== null;
  return hotEnd.driveForce === undefined || isKnown
    ? []
    : [`No melt viscosity of ${filament.data.polymer} is known: the force of the drive does not bound.`];
}

function thickeningTerm({
  thickening,
  meanTemperature,
}: Pick<Traction, 'thickening' | 'meanTemperature'>): Term {
  const temperature = shown(rounded(meanTemperature, 3), 'temperature');
  return {
    symbol: 'k',
    what: `how many times as viscous the melt is at the mean temperature at which it leaves, ${temperature}`,
    value: thickening,
    dimension: null,
    ground: null,
    origin: 'solved',
  };
}

interface FamilyStatement {
  readonly family: Profile<'polymer'>;
  readonly statement: Statement<Range>;
}

/** Of what some families state of a property, the statement whose end comes lowest; null where nothing is stated. */
function lowestOf(
  registry: Registry,
  families: readonly Polymer[],
  property: 'meltViscosity' | 'compressiveYield',
  end: (range: Range) => number,
): FamilyStatement | null {
  const all = families.flatMap(({ id }) => {
    const family = registry.polymer.get(id);
    return (family?.data[property] ?? []).flatMap((statement) =>
      family === undefined ? [] : [{ family, statement }],
    );
  });
  return all.toSorted((a, b) => end(a.statement.value) - end(b.statement.value))[0] ?? null;
}

function familyTerm(
  symbol: string,
  { family, statement }: FamilyStatement,
  end: (range: Range) => number,
): Term {
  return sourcedTerm(symbol, sourcedStatement(family, statement), end(statement.value));
}
