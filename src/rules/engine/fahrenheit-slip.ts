import type { Range } from '../../units/canonical.ts';
import { shown, shownNumber, shownRange } from '../../units/wording.ts';

/**
 * What to write where a temperature would be right if it was read in degrees Fahrenheit, or null where it would not.
 * In quotes, since brackets outside of them end a mapping in braces.
 * t/Cel = (t/[degF] - 32)/1.8 (NIST SP 811, appendix B.8).
 */
export function fahrenheitSlip(written: Range, sane: Range): string | null {
  const read = { low: (written.low - 32) / 1.8, high: (written.high - 32) / 1.8 };
  if (read.low < sane.low || read.high > sane.high) return null;
  if (written.low === written.high) {
    return `If it was read in degrees Fahrenheit, write \`'${shownNumber(written.low)} [degF]'\`, which is ${shown(read.low, 'temperature')}.`;
  }
  const text = `${shownNumber(written.low)}..${shownNumber(written.high)} [degF]`;
  return `If it was read in degrees Fahrenheit, write \`'${text}'\`, which is ${shownRange(read, 'temperature')}.`;
}
