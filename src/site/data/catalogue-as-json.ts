import { tableCautions } from '../../knowledge/cautions.ts';
import { jsonText } from '../../text/json-text.ts';
import { amountOf } from '../../units/rounded.ts';
import type { CataloguedPairing } from '../catalogued-pairing.ts';

/** Version of the form, see `schema/output/catalogue.schema.json`. */
const catalogueFormat = 'meltbounds-catalogue/1';

/** The pairings of the first page for programs: quantities with their units, pages from the root of the site. */
export function catalogueJson(pairings: readonly CataloguedPairing[]): string {
  return jsonText({ format: catalogueFormat, pairings: pairings.map(described), cautions: tableCautions });
}

function described(pairing: CataloguedPairing) {
  const { policy, machine, nozzle, filament, page, polymer, nozzleMaterial, warnings, largestFlow } = pairing;
  const { limit, interval, basis, isSimulated } = largestFlow;
  return {
    ...{ policy, machine, nozzle, filament, page, polymer, nozzleMaterial },
    nozzleDiameter: amountOf(pairing.nozzleDiameter, 'mm'),
    nozzleTemperature: amountOf(pairing.temperature, 'Cel'),
    largestFlow: {
      value: amountOf(limit, 'mm3/s'),
      interval:
        interval === null
          ? null
          : { low: amountOf(interval.low, 'mm3/s'), high: amountOf(interval.high, 'mm3/s') },
      basis,
      simulated: isSimulated,
    },
    warnings,
  };
}
