import { placeOfReading } from '../../bench/flow-ladder/ladder-readings.ts';
import { ladder } from '../engine/examples.ts';
import { leastRepeated, repeatedRows } from '../engine/repeated-rows.ts';
import type { ProfileRule } from '../engine/rule.ts';
import { formulaOfTelling, sourceOfTelling, type ToldRow } from '../engine/told-rows.ts';

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'profile',
  kinds: ['trial'],
  severity: 'warning',
  statement: 'No row of readings is told twice.',
  rationale:
    'A row or a block that was pasted once more counts as a repeat that agrees to the last figure, and makes the result surer than it is.',
  source: sourceOfTelling,
  formula: `Rows equal to others above them, one after the other: F >= ${leastRepeated.block} in ${leastRepeated.rows} rows or more; fewer, of 500 steps of the last digit or more, of settings that stand once more often in the sheet than any other (of a hundred steps, or like all of its setting, one row beside ${leastRepeated.equals} settings or more that stand equally often, more than once); rows from within the repeats of one setting to those of another, right below those that they repeat, without which the settings are in order; or F >= ${leastRepeated.readings} in equal readings at other settings. ${formulaOfTelling}`,
  example: {
    kind: 'trial',
    bad: ladder([8, 12, 12, 14, 16, 18, 20, 22]),
    good: ladder([8, 12, 14, 16, 18, 20, 22]),
  },
  *check(profile) {
    for (const { rows, originals, isOfReadings } of repeatedRows(profile)) {
      const [[row], [original]] = [rows, originals];
      if (row === undefined || original === undefined) continue;
      const those = rowsText(originals);
      yield {
        ...placeOfReading(profile, row),
        part: 'value',
        message: isOfReadings
          ? `The readings of ${rowsText(rows)} are those of ${those} to the last figure, at other settings`
          : rows.length === 1
            ? `This row is told twice: it says what ${those} says, to the last figure`
            : `A block is pasted once more: ${rowsText(rows)} are ${those}, to the last figure`,
        found: isOfReadings ? row.read : row.all,
        allowed: 'each reading once',
        help: 'Compare with the bench sheet, and take out what stands there once. If it really was read twice, say so in a field note and acknowledge the finding.',
      };
    }
  },
};

function rowsText(rows: readonly ToldRow[]): string {
  const [first, last] = [rows[0], rows.at(-1)];
  return first === last ? `row ${first?.row}` : `rows ${first?.row} to ${last?.row}`;
}
