import fc from 'fast-check';
import { type Dimension, dimensions } from '../../src/units/dimension.ts';
import { spaces } from '../../src/units/number-form.ts';
import { type Unit, units } from '../../src/units/unit-table.ts';

/** Texts and values that property tests draw from. */

export const anyDimension: fc.Arbitrary<Dimension> = fc.constantFrom(...dimensions);
export const anyUnit: fc.Arbitrary<Unit> = fc.constantFrom(...units);
export const anySpaces = fc.string({ unit: fc.constantFrom(...spaces), maxLength: 3 });

function digits(minLength: number, maxLength: number): fc.Arbitrary<string> {
  return fc.string({ unit: fc.constantFrom(...'0123456789'), minLength, maxLength });
}

/** Well-formed numbers: at most 7 + 8 digits, so that 15 significant ones are never exceeded. */
export const anyNumberText: fc.Arbitrary<string> = fc
  .tuple(
    fc.constantFrom('', '-'),
    fc.integer({ min: 0, max: 9_999_999 }).map(String),
    fc.option(digits(1, 8), { nil: undefined }),
    fc.constantFrom('', '', '', 'e3', 'E-2', 'e+05'),
  )
  .map(
    ([sign, whole, decimals, exponent]) =>
      `${sign}${whole}${decimals === undefined ? '' : `.${decimals}`}${exponent}`,
  );

export function spellingOf(unit: Unit): fc.Arbitrary<string> {
  return fc.constantFrom(unit.code, ...unit.aliases);
}

/** A value in the canonical unit, in the span that a text can hold. */
export function canonicalValue(dimension: Dimension): fc.Arbitrary<number> {
  const [min, max] = dimension === 'temperature' ? [-273.15, 1e4] : [-1e30, 1e30];
  return fc.double({ min, max, noNaN: true }).map((value) => (Math.abs(value) < 1e-60 ? 0 : value));
}

/** The fragments that quantities and slips in them are made of, in any order. */
const fragments = [
  ...'0123456789',
  ...[
    '.',
    '..',
    ',',
    '-',
    '+',
    '_',
    'e',
    'E',
    ' ',
    '\u00a0',
    '1',
    '%',
    '/',
    '(',
    ')',
    '·',
    '\n',
    '\u2212',
    'NaN',
  ],
  ...[
    'mm',
    'mm3/s',
    'mm³/s',
    'Cel',
    '°C',
    'K',
    'g',
    'EUR',
    '{count}',
    'dB(A)',
    '[in_i]',
    '0x1F',
    '0.5 1',
    '190..235 Cel',
  ],
];

export const anyScrap: fc.Arbitrary<string> = fc.oneof(
  fc.string({ unit: fc.constantFrom(...fragments), maxLength: 8 }),
  fc.string({ unit: 'binary', maxLength: 30 }),
);
