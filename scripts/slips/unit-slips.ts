import type { RandomSource } from '../../src/statistics/random.ts';
import { dimensionInfo, dimensions } from '../../src/units/dimension.ts';
import { findUnit } from '../../src/units/unit-table.ts';
import type { Slip } from './slip.ts';
import { plainNumber, slipIn, type WrittenQuantity, withNumbers, withUnit } from './written-quantity.ts';

/** Units that are typed for one another, of the same dimension. */
const takenFor: Readonly<Record<string, readonly string[]>> = {
  'mm/s': ['mm/min', 'm/s', 'm/min', '[in_i]/s'],
  'm/s': ['mm/s', 'm/min'],
  'mm3/s': ['cm3/h', 'mm3/min', 'cm3/min', 'cm3/s'],
  'mm/s2': ['m/s2', '[g]'],
  mm: ['m', 'cm', 'um', '[in_i]'],
  m: ['mm', 'cm'],
  um: ['mm'],
  g: ['kg', 'mg'],
  kg: ['g'],
  s: ['min', 'ms', 'h'],
  min: ['s', 'h'],
  h: ['min', 's', 'd'],
  'g/cm3': ['kg/m3', 'g/mm3'],
  'J/g/K': ['J/kg/K'],
  W: ['kW', 'mW'],
  Cel: ['[degF]', 'K'],
  '%': ['1'],
  MPa: ['kPa', 'Pa', 'GPa'],
};

/** Slips in the unit of a quantity, and numbers that were read in another one. */
export function unitSlips(quantity: WrittenQuantity, random: RandomSource): Slip[] {
  const { unit, leaf, numbers } = quantity;
  const others = takenFor[unit] ?? [];
  return [
    ...foreignUnit(quantity, random),
    ...(numbers.every(({ digits }) => Number(digits) === 0)
      ? []
      : [
          ...others.flatMap((other) =>
            slipIn('right number, wrong unit', quantity, withUnit(quantity, other)),
          ),
          ...(unit === 'Cel' ? [] : others.flatMap((other) => inOtherUnit(quantity, other))),
        ]),
    ...(leaf.shape.dimension === 'temperature' && unit === 'Cel' && numbers.length > 0
      ? [
          ...slipIn(
            'Fahrenheit under Cel',
            quantity,
            withNumbers(quantity, (value) => value * 1.8 + 32),
          ),
          ...slipIn(
            'Kelvin under Cel',
            quantity,
            withNumbers(quantity, (value) => Math.round(value + 273)),
          ),
        ]
      : []),
  ];
}

function foreignUnit(quantity: WrittenQuantity, random: RandomSource): Slip[] {
  const foreign = dimensions
    .map((dimension) => dimensionInfo[dimension].usualUnit)
    .filter((unit) => findUnit(unit, quantity.leaf.shape.dimension) === undefined);
  const unit = foreign[Math.floor(random.uniform() * foreign.length)];
  return unit === undefined ? [] : slipIn('unit of another dimension', quantity, withUnit(quantity, unit));
}

/** The number that the quantity has in another unit, under its own unit. */
function inOtherUnit(quantity: WrittenQuantity, other: string): Slip[] {
  const [own, foreign] = [quantity.unit, other].map((code) => findUnit(code, quantity.leaf.shape.dimension));
  if (own === undefined || foreign === undefined || quantity.numbers.length === 0) return [];
  const scale = own.factor / foreign.factor;
  const rounded = (value: number) => Number(plainNumber(Number((value * scale).toPrecision(4))));
  return slipIn('number of another unit', quantity, withNumbers(quantity, rounded));
}
