import { isSimulated } from '../knowledge/origin.ts';
import { findNozzle } from '../registry/nozzle.ts';
import type { Registry } from '../registry/registry.ts';
import { type Basis, chooseStatement } from '../registry/statement.ts';
import type { FullRequest } from '../tables/derive/every-pairing.ts';
import type { LargestFlow, SpeedTable } from '../tables/derive/speed-table.ts';
import type { Money, Range } from '../units/canonical.ts';
import { pairingPage } from './address.ts';

/** A melt flow limit at a nozzle temperature that was tested or is claimed. */
export interface TestedLimit {
  readonly temperature: number;
  readonly value: number;
  readonly interval: Range | null;
  readonly basis: Basis;
  readonly isSimulated: boolean;
  /** What its statement adds, such as that it is a lower bound; null where nothing. */
  readonly note: string | null;
}

/** What lists and searches say of a pairing that has a table; quantities in canonical units. */
export interface CataloguedPairing extends FullRequest {
  readonly page: string;
  readonly machineName: string;
  readonly filamentName: string;
  readonly polymer: string;
  readonly nozzleDiameter: number;
  readonly nozzleMaterial: string;
  readonly chamber: { readonly enclosed: boolean; readonly heated: boolean };
  /** dB(A); null where it is not known. */
  readonly noise: number | null;
  /** Of the machine; null where it is not known. */
  readonly price: Money | null;
  readonly temperature: number;
  readonly largestFlow: Pick<LargestFlow, 'limit' | 'interval' | 'basis' | 'isSimulated' | 'note'>;
  /** From the coolest nozzle temperature to the hottest. */
  readonly limits: readonly TestedLimit[];
  readonly warnings: number;
}

export function cataloguedPairing(
  registry: Registry,
  request: FullRequest,
  table: SpeedTable,
): CataloguedPairing {
  const machine = registry.machine.get(request.machine)?.data;
  const filament = registry.filament.get(request.filament)?.data;
  const fitted = machine && findNozzle(machine, request.nozzle);
  const { limit, interval, basis, note, isSimulated: fromSimulation } = table.largestFlow;
  return {
    ...request,
    page: pairingPage(request),
    machineName: machine?.name ?? request.machine,
    filamentName: filament?.name ?? request.filament,
    polymer: filament?.polymer ?? '',
    nozzleDiameter: table.nozzleDiameter,
    nozzleMaterial: fitted?.nozzle.material ?? '',
    chamber: { enclosed: machine?.chamber.enclosed ?? false, heated: machine?.chamber.heated ?? false },
    noise: chooseStatement(machine?.soundLevel, {})?.value ?? null,
    price: chooseStatement(machine?.price, {})?.value ?? null,
    temperature: table.temperatures.print,
    largestFlow: { limit, interval, basis, isSimulated: fromSimulation, note },
    limits: table.meltLimits.map((each) => testedLimit(each, registry)),
    warnings: table.warnings.length,
  };
}

function testedLimit(
  { nozzleTemperature, value, basis, ground, note }: SpeedTable['meltLimits'][number],
  registry: Registry,
): TestedLimit {
  const { interval, evidence } = ground;
  const simulated = evidence !== null && isSimulated({ value, basis, evidence }, registry);
  return { temperature: nozzleTemperature, value, interval, basis, isSimulated: simulated, note };
}
