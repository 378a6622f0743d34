import type { FittedRequest } from '../knowledge/pairing.ts';
import { type Problem, type Result, success } from '../result.ts';
import { quote } from '../text/quote.ts';
import { usage } from './usage.ts';

/** Reads `MACHINE:NOZZLE+FILAMENT` or `MACHINE+FILAMENT`, such as `brackwater/lantern:hs-0.6+ashgrove/stagecraft-pla`. */
export function readPairing(written: string): Result<FittedRequest, Problem<'usage'>> {
  const [, machine, nozzle, filament] = /^([^:+\s]+)(?::([^:+\s]+))?\+([^:+\s]+)$/.exec(written) ?? [];
  if (machine === undefined || filament === undefined) {
    return usage(
      `"${quote(written)}" is not a pairing`,
      'Write MACHINE:NOZZLE+FILAMENT, for instance brackwater/lantern:hs-0.6+ashgrove/stagecraft-pla; the nozzle may be left out.',
    );
  }
  return success({ machine, filament, ...(nozzle !== undefined && { nozzle }) });
}
