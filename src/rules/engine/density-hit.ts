import type { DensityEnvelope } from '../../knowledge/density-envelope.ts';
import type { Filament } from '../../registry/generated/documents.ts';
import type { Hit } from '../../registry/hit.ts';
import type { Path } from '../../registry/shape.ts';
import type { Fraction, GramsPerCubicMillimetre } from '../../units/canonical.ts';
import { shown, shownNumber, shownRange } from '../../units/wording.ts';

/** A density outside of what families and fillers give, as a finding. */
export function densityHit(
  path: Path,
  density: GramsPerCubicMillimetre,
  off: Fraction,
  filament: Filament,
  envelope: DensityEnvelope,
): Hit {
  const expected = shownRange(envelope, 'density');
  const reason = envelope.filled
    ? `${filament.polymer} with its fillers comes to ${expected} by the mixing rule`
    : `unfilled ${filament.polymer} has ${expected}`;
  return {
    path,
    part: 'value',
    message: `The density ${shown(density, 'density')} is ${shownNumber(Math.abs(Number((100 * off).toFixed(1))))} % too ${off < 0 ? 'low' : 'high'}: ${reason}`,
    found: shown(density, 'density'),
    allowed: expected,
    source: envelope.source,
    help: 'Check the digits; if the grade holds a filler, state it under `fillers` and in the designation.',
  };
}
