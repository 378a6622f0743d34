import { type CopiedRows, copiedRows, leastCopied } from '../engine/copied-rows.ts';
import { alike, allFlows, ladder } from '../engine/examples.ts';
import type { ProfileRule } from '../engine/rule.ts';
import { formulaOfTelling, sourceOfTelling, toldRows } from '../engine/told-rows.ts';

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'The readings of a trial are not those of another trial.',
  rationale:
    'No bench reads the same figures twice; readings that were copied for want of a run make a limit of another pairing.',
  source: sourceOfTelling,
  formula: `F + G - lg C(n, k) >= ${leastCopied.ofOtherPairing} where all rows of the shorter sheet, or all but one, stand at the same places of one of another machine, nozzle or filament, G = ${leastCopied.ofOtherLadder.toFixed(1)} of flow ladders of another machine or filament, whose levels and limits differ, and F >= ${leastCopied.ofAny}; F - lg C(n, k) - sum of lg r >= ${leastCopied.rows} in k of n rows that are equal, each one of r repeats; F >= ${leastCopied.run} in equal readings one after the other, at whatever settings; F - n lg 2 >= ${leastCopied.scaled} where all n readings differ by one factor; or -k lg((a + 1)/(p + 1)) - lg C(n, k) >= ${leastCopied.wholeFigures} in k of n rows, ${leastCopied.whole} or more, that are equal at the same places, where a of p repeats in the sheet agree (p + 2 where all readings have two figures or more). ${formulaOfTelling}`,
  example: alike(
    'trial',
    { bad: ladder(allFlows), good: ladder(allFlows, { apart: 0.003 }) },
    (observations) => `
id: wren-clover-petg-245-again
date: '2026-02-19'${observations}`,
    { copied: true },
  ),
  *check(profile, { registry }) {
    const copied = copiedRows(profile, registry);
    if (copied === null) return;
    const { machine, filament, date } = copied.other.data;
    const on = machine === undefined ? '' : ` on ${machine}`;
    yield {
      path: ['observations'],
      part: 'key',
      message: `${sharedText(copied, toldRows(profile).length)} those of the trial "${copied.other.id}" of ${date}, which was run with ${filament}${on}${factorText(copied)}`,
      found: `readings of ${copied.other.id}`,
      allowed: `readings of ${profile.id}`,
      help: 'Compare both trials with their bench sheets. Enter the readings that belong here; where there are none, remove the trial and what rests on it.',
    };
  },
};

function sharedText({ count }: CopiedRows, all: number): string {
  return count === all ? `All ${all} readings are` : `${count} of ${all} rows have`;
}

function factorText({ factor }: CopiedRows): string {
  return factor === 1 ? '' : `, multiplied by ${Number(factor.toPrecision(4))}`;
}
