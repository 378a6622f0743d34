import { dimensions } from '../../src/units/dimension.ts';
import { inPrint } from '../../src/units/in-print.ts';
import { parseMoney, parseQuantity, parseRange, parseUnit } from '../../src/units/parse-quantity.ts';
import { type FuzzArea, must, mustBeSafe } from './fuzz-area.ts';

const seeds = [
  'volumeFlow 75 mm3/s',
  'temperature 230 Cel',
  'temperature 190..235 °C',
  'density 1.24 g/cm3',
  'ratio 0.5 %',
  'acceleration 8000 mm/s2',
  'soundLevel 62 dB(A)',
  'money 349 EUR',
  'length 0.2..0.4 mm',
];

/** A quantity, a range, a unit or a price behind the name of a dimension. */
export const quantityArea: FuzzArea = {
  name: 'quantities',
  share: 0.1,
  seeds,
  take: (given) => {
    const [name = '', ...words] = given.split(' ');
    const dimension = dimensions.find((known) => known === name) ?? 'length';
    const text = words.join(' ');
    const value = parseQuantity(text, dimension);
    const reads = [value, parseRange(text, dimension), parseUnit(text, dimension), parseMoney(text)];
    for (const read of reads) {
      if (read.ok) continue;
      must(read.error.message.length + read.error.help.length < 2000, 'a message without an end');
      mustBeSafe(`${read.error.message} ${read.error.help}`);
    }
    must(!value.ok || Number.isFinite(value.value.value), 'a quantity that is no number');
    inPrint(text);
    return reads.some(({ ok }) => ok);
  },
};
