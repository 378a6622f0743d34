import { InvalidArgumentError } from 'commander';
import type { AskedSize } from '../../tables/derive/beads.ts';
import { parseQuantity } from '../../units/parse-quantity.ts';

/** A nozzle temperature with its unit, in °C. */
export function temperatureArgument(text: string): number {
  const read = parseQuantity(text, 'temperature');
  if (read.ok) return read.value.value;
  throw new InvalidArgumentError(`${read.error.message}. Write for instance "230 Cel".`);
}

/** A layer height or line width in mm or as a share of the nozzle diameter; the option may be repeated. */
export function sizeArgument(text: string, earlier: readonly AskedSize[] = []): AskedSize[] {
  const length = parseQuantity(text, 'length');
  const share = parseQuantity(text, 'ratio');
  if (length.ok && length.value.value > 0) return [...earlier, { millimetres: length.value.value }];
  if (share.ok && share.value.value > 0) return [...earlier, { ofNozzle: share.value.value }];
  throw new InvalidArgumentError(
    'Write a size above 0 with its unit, for instance "0.2 mm", or "50 %" of the nozzle.',
  );
}
