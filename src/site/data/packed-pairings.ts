import { type Basis, basesByStrength } from '../../registry/statement.ts';
import { pairingPage } from '../address.ts';
import type { CataloguedPairing, TestedLimit } from '../catalogued-pairing.ts';
import type { CatalogueData } from './catalogue-data.ts';

/**
 * The pairings under one of the house rules, column by column, since a browser loads thousands of them: machines, nozzles of
 * the machine and filaments by their places in the data of the catalogue. What the data of the catalogue say is not said again.
 */
export interface PackedPairings {
  readonly policy: string;
  readonly machine: readonly number[];
  readonly nozzle: readonly number[];
  readonly filament: readonly number[];
  readonly warnings: readonly number[];
  /** How many limits each pairing has, the one of its table behind them. */
  readonly count: readonly number[];
  /** The limits of all pairings, one after the other. */
  readonly limits: PackedLimits;
  /** What limits add; a limit names it by its place. */
  readonly notes: readonly string[];
}

interface PackedLimits {
  readonly temperature: readonly number[];
  readonly value: readonly number[];
  /** Ends of the interval; null without one. */
  readonly low: readonly (number | null)[];
  readonly high: readonly (number | null)[];
  /** Twice the place of the basis among all, one more where the readings were simulated. */
  readonly basis: readonly number[];
  /** Place of the note from 1; 0 for none. */
  readonly note: readonly number[];
}

export function packPairings(
  policy: string,
  pairings: readonly CataloguedPairing[],
  { machines, filaments }: CatalogueData,
): PackedPairings {
  const machinePlaces = new Map(machines.map(({ id }, place) => [id, place]));
  const filamentPlaces = new Map(filaments.map(({ id }, place) => [id, place]));
  const known = pairings.flatMap((pairing) => {
    const machine = machinePlaces.get(pairing.machine);
    const filament = filamentPlaces.get(pairing.filament);
    const nozzles = machines[machine ?? -1]?.nozzles ?? [];
    const nozzle = nozzles.findIndex(({ id }) => id === pairing.nozzle);
    return machine === undefined || filament === undefined || nozzle === -1
      ? []
      : [{ pairing, machine, filament, nozzle }];
  });
  const limits = known.map(({ pairing }) => [...pairing.limits, tableLimit(pairing)]);
  const all = limits.flat();
  const notes = [...new Set(all.flatMap(({ note }) => note ?? []))];
  return {
    policy,
    machine: known.map(({ machine }) => machine),
    nozzle: known.map(({ nozzle }) => nozzle),
    filament: known.map(({ filament }) => filament),
    warnings: known.map(({ pairing }) => pairing.warnings),
    count: limits.map(({ length }) => length),
    limits: {
      temperature: all.map(({ temperature }) => temperature),
      value: all.map(({ value }) => value),
      low: all.map(({ interval }) => interval?.low ?? null),
      high: all.map(({ interval }) => interval?.high ?? null),
      basis: all.map(({ basis, isSimulated }) => 2 * basesByStrength.indexOf(basis) + (isSimulated ? 1 : 0)),
      note: all.map(({ note }) => (note === null ? 0 : notes.indexOf(note) + 1)),
    },
    notes,
  };
}

function tableLimit({ largestFlow: { limit, ...flow }, temperature }: CataloguedPairing): TestedLimit {
  return { ...flow, value: limit, temperature };
}

export function unpackPairings(packed: PackedPairings, data: CatalogueData): CataloguedPairing[] {
  let end = 0;
  return packed.machine.flatMap((place, index) => {
    const start = end;
    end += packed.count[index] ?? 0;
    const limits = Array.from({ length: end - start }, (_, offset) => limitAt(packed, start + offset));
    return pairingOf(packed, index, limits, data, place) ?? [];
  });
}

function limitAt({ limits, notes }: PackedPairings, place: number): TestedLimit {
  const { temperature, value, low, high, basis, note } = limits;
  const code = basis[place] ?? 0;
  const [from, to] = [low[place] ?? null, high[place] ?? null];
  return {
    temperature: temperature[place] ?? Number.NaN,
    value: value[place] ?? Number.NaN,
    interval: from === null || to === null ? null : { low: from, high: to },
    basis: basesByStrength[code >> 1] ?? weakest,
    isSimulated: code % 2 === 1,
    note: notes[(note[place] ?? 0) - 1] ?? null,
  };
}

const weakest: Basis = 'assumed';

function pairingOf(
  { policy, nozzle, filament, warnings }: PackedPairings,
  index: number,
  limits: readonly TestedLimit[],
  { machines, filaments }: CatalogueData,
  place: number,
): CataloguedPairing | null {
  const machine = machines[place];
  const fitted = machine?.nozzles[nozzle[index] ?? -1];
  const strand = filaments[filament[index] ?? -1];
  const last = limits.at(-1);
  if (machine === undefined || fitted === undefined || strand === undefined || last === undefined)
    return null;
  const request = { policy, machine: machine.id, nozzle: fitted.id, filament: strand.id };
  const { temperature, value, ...flow } = last;
  return {
    ...request,
    page: pairingPage(request),
    machineName: machine.name,
    filamentName: strand.name,
    polymer: strand.polymer,
    nozzleDiameter: fitted.diameter,
    nozzleMaterial: fitted.material,
    ...{ chamber: machine.chamber, noise: machine.noise, price: machine.price },
    temperature,
    largestFlow: { limit: value, ...flow },
    limits: limits.slice(0, -1),
    warnings: warnings[index] ?? 0,
  };
}
