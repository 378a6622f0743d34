import { type Document, list, paragraph, table } from '../../text/document.ts';
import { formatNumber } from '../../units/format-quantity.ts';
import type { TableFamily } from '../derive/table-family.ts';
import { tableTitle } from './table-as-json.ts';
import { basisText, withUnit } from './words.ts';

/** What a family of tables begins with: the largest flow at each temperature, and which the policy would take and why. */
export function familyDocument({ tables, chosen, chosenBy }: TableFamily): Document {
  const [first] = tables;
  return {
    title: first === undefined ? null : tableTitle(first),
    answer: `Limits are known at ${tables.length === 1 ? 'one nozzle temperature' : `${tables.length} nozzle temperatures`}; the table would be for ${withUnit(chosen, 'Cel')}: ${chosenBy}.`,
    blocks: [
      table(
        [
          { heading: 'nozzle', unit: 'Cel', align: 'right' },
          { heading: 'largest flow', unit: 'mm3/s', align: 'right' },
          { heading: 'interval', align: 'left' },
          { heading: 'the house uses', unit: 'mm3/s', align: 'right' },
          { heading: 'rests on', align: 'left' },
          { heading: '', align: 'left' },
        ],
        tables.map(({ temperatures: { print }, largestFlow }) => {
          const { limit, interval, usable, basis, isSimulated } = largestFlow;
          return [
            print,
            digits(limit),
            interval === null ? 'none' : `${digits(interval.low)} to ${digits(interval.high)}`,
            usable,
            basisText(basis, isSimulated ? ['simulated'] : []),
            print === chosen ? 'chosen' : '',
          ];
        }),
      ),
      paragraph(
        'A table for each of them follows; the numbers of different tables do not belong into one print.',
      ),
      list(
        tables.map(
          ({ largestFlow: { trials }, temperatures: { print } }) =>
            `${withUnit(print, 'Cel')}: ${trials.length === 0 ? 'no trial' : trials.map(({ id, date }) => `trial ${id} of ${date}`).join(', ')}`,
        ),
      ),
    ],
  };
}

function digits(value: number): number {
  return Number(formatNumber(value, { significantDigits: 4 }));
}
