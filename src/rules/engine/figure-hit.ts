import type { FigureOutside } from '../../knowledge/figure-outside.ts';
import type { Hit } from '../../registry/hit.ts';
import { shown } from '../../units/wording.ts';

/** A figure outside of its band as a finding; `why` ends the sentence that begins with the figure. */
export function figureHit(
  { path, dimension, value, band }: FigureOutside,
  why: string,
  allowed: string,
): Hit {
  return {
    path,
    part: 'value',
    blames: [{ path }],
    message: `${shown(value, dimension)} ${why} (${allowed})`,
    found: shown(value, dimension),
    allowed,
    source: band.source,
    help: 'Check the decimal point and the unit against the source; these are the usual mistakes.',
  };
}
