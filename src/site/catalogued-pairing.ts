import { findNozzle } from '../registry/nozzle.ts';
import type { Registry } from '../registry/registry.ts';
import type { FullRequest } from '../tables/derive/every-pairing.ts';
import type { LargestFlow, SpeedTable } from '../tables/derive/speed-table.ts';
import { pairingPage } from './address.ts';

/** What lists and searches say of a pairing that has a table; quantities in canonical units. */
export interface CataloguedPairing extends FullRequest {
  readonly page: string;
  readonly machineName: string;
  readonly filamentName: string;
  readonly polymer: string;
  readonly nozzleDiameter: number;
  readonly nozzleMaterial: string;
  readonly temperature: number;
  readonly largestFlow: Pick<LargestFlow, 'limit' | 'interval' | 'basis' | 'isSimulated'>;
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
  const { limit, interval, basis, isSimulated } = table.largestFlow;
  return {
    ...request,
    page: pairingPage(request),
    machineName: machine?.name ?? request.machine,
    filamentName: filament?.name ?? request.filament,
    polymer: filament?.polymer ?? '',
    nozzleDiameter: table.nozzleDiameter,
    nozzleMaterial: fitted?.nozzle.material ?? '',
    temperature: table.temperatures.print,
    largestFlow: { limit, interval, basis, isSimulated },
    warnings: table.warnings.length,
  };
}
