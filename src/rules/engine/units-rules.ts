import type { UnitsRule } from '../../registry/form/quantity-rule.ts';
import type { ReadingText, RuleExample } from './rule.ts';

const ucum = 'The Unified Code for Units of Measure (UCUM), case-sensitive codes';
const form =
  'Format of the registry: a quantity is a number, a space and a unit; schema/quantity.schema.json';

/** How a quantity must be written. */
export const unitsRuleTexts: Readonly<Record<UnitsRule, ReadingText>> = {
  'units/bare-number': {
    statement: 'A quantity carries its unit.',
    rationale: 'Nobody can tell whether 500 was meant in mm/s or mm/min, and the machine runs either.',
    source: `${ucum}; BIPM, The International System of Units, 9th edition, 2.1: value = number times unit`,
    example: topSpeed('500', '500 mm/s'),
  },
  'units/missing-unit': {
    statement: 'The number of a quantity is followed by a unit.',
    rationale: 'Nobody can tell whether 500 was meant in mm/s or mm/min, and the machine runs either.',
    source: `${ucum}; BIPM, The International System of Units, 9th edition, 2.1: value = number times unit`,
    example: topSpeed('"500"', '500 mm/s'),
  },
  'units/unknown-unit': {
    statement: 'A unit is one that the registry knows.',
    rationale: 'A unit that cannot be converted cannot be compared with any limit.',
    source: ucum,
    example: topSpeed('500 mms', '500 mm/s'),
  },
  'units/wrong-dimension': {
    statement: 'A unit measures what the key stands for.',
    rationale: 'A flow in the place of a speed is a value in the wrong line.',
    source: ucum,
    example: topSpeed('500 mm3/s', '500 mm/s'),
  },
  'units/not-a-number': {
    statement: 'A quantity begins with a number.',
    rationale: 'Words such as "fast" or "n/a" are no values; what is not known is left out.',
    source: form,
    example: topSpeed('about 500 mm/s', '500 mm/s'),
  },
  'units/endless-number': {
    statement: 'A number has no more than 15 significant digits.',
    rationale: 'More digits than any instrument shows are the result of a division that was pasted.',
    source: 'IEEE 754-2019: 15 decimal digits survive the way into binary64 and back. JCGM 100:2008, 7.2.6.',
    example: topSpeed('333.3333333333333333 mm/s', '333 mm/s'),
  },
  'units/number-form': {
    statement: 'A number is written with a decimal point, without grouping, sign of plus or leading zeros.',
    rationale: 'The comma of 1,240 groups thousands in one country and starts decimals in another.',
    source: form,
    example: topSpeed('"1,240 mm/s"', '1240 mm/s'),
  },
  'units/below-absolute-zero': {
    statement: 'No temperature lies below absolute zero.',
    rationale: 'Nothing is colder; a sign or a unit is wrong.',
    source: 'BIPM, The International System of Units, 9th edition, 2.3.1: t/°C = T/K − 273.15.',
    formula: 't ≥ −273.15 °C',
    example: {
      kind: 'trial',
      bad: 'conditions:\n  nozzleTemperature: 245 Cel\n  ambientTemperature: -300 Cel',
      good: 'conditions:\n  nozzleTemperature: 245 Cel\n  ambientTemperature: 21 Cel',
    },
  },
  'units/range-reversed': {
    statement: 'The lower end of a range stands first.',
    rationale: 'Swapped ends are a slip, and the digit of one of them may be wrong as well.',
    source: form,
    formula: 'low ≤ high',
    example: nozzleTemperature('255..230 Cel', '230..255 Cel'),
  },
  'units/range-expected': {
    statement: 'Where a range belongs, both of its ends are written, joined by two points.',
    rationale: 'A hyphen between numbers is also a minus sign, and a single value is no window.',
    source: form,
    example: nozzleTemperature('230-255 Cel', '230..255 Cel'),
  },
  'units/single-expected': {
    statement: 'Where a single value belongs, one value is written.',
    rationale: 'A calculation cannot tell which end of a range was meant.',
    source: form,
    example: topSpeed('400..500 mm/s', '500 mm/s'),
  },
  'units/not-text': {
    statement: 'A quantity is a text, not a list, a mapping, true, false or nothing.',
    rationale: 'What is not known is left out; an empty value would stand in its place for ever.',
    source: form,
    example: topSpeed('[500 mm/s]', '500 mm/s'),
  },
};

function topSpeed(bad: string, good: string): RuleExample {
  const text = (value: string) =>
    `topSpeed:\n  - {value: ${value}, basis: claimed, source: plumstead-wren-sheet}`;
  return { kind: 'machine', bad: text(bad), good: text(good) };
}

function nozzleTemperature(bad: string, good: string): RuleExample {
  const text = (value: string) =>
    `nozzleTemperature:\n  - {value: ${value}, basis: claimed, source: oakhollow-clover-petg-sheet}`;
  return { kind: 'filament', bad: text(bad), good: text(good) };
}
