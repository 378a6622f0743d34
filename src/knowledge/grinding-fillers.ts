import { abrasionOfNozzle } from '../physics/abrasion.ts';
import { fillerMaterials, readFillerSymbol } from '../physics/filler-symbol.ts';
import type { Filament } from '../registry/generated/documents.ts';
import type { Nozzle } from '../registry/nozzle.ts';

/** The fillers of a filament that grind a nozzle fast, as messages name them: `glass (GF)`. */
export function grindingFillers({ fillers = [] }: Filament, { material }: Nozzle): string[] {
  return fillers.flatMap(({ symbol }) => {
    const filler = readFillerSymbol(symbol);
    if (filler === undefined || abrasionOfNozzle(filler.material, material) !== 'severe') return [];
    return `${fillerMaterials[filler.material]} (${symbol})`;
  });
}
