import { basisWords } from '../../knowledge/origin.ts';
import type { Basis } from '../../registry/statement.ts';
import { printedUnit } from '../../units/print-symbols.ts';
import type { RowFlag } from '../derive/row-flag.ts';

/** What a flag says of a row. */
export const flagText: Readonly<Record<RowFlag, string>> = {
  unsupported: 'a limit is not what its own trial supports',
  stale: 'a trial was run with other controller software',
  acknowledged: 'what is wrong with the evidence of a limit was accepted by a reviewer until a date',
  untested: 'no contour speed was found at this layer height and acceleration',
  weakBasis: 'what limits the speed rests on less than the policy asks for',
  capped: 'what limits the speed rests on less than the policy asks for, so that only a share of it is used',
  simulated: 'the readings of a trial that it rests on are simulated',
  invented: 'a profile that it rests on is invented',
  quirk: 'a field note of the bench concerns it',
};

/** A basis in words: `measured`, or `measured (simulated)` where a simulated trial shows it. */
export function basisText(basis: Basis, flags: readonly RowFlag[]): string {
  return basisWords(basis, flags.includes('simulated'));
}

/** A number with its unit as print writes it: `230 °C`. */
export function withUnit(value: number, unit: string): string {
  const printed = printedUnit(unit);
  return printed === '' ? String(value) : `${value} ${printed}`;
}
