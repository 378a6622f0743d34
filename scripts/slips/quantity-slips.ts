import { shapes } from '../../src/registry/generated/shapes.ts';
import type { AnyProfile } from '../../src/registry/profile.ts';
import { type Leaf, leavesOf, type QuantityShape } from '../../src/registry/shape.ts';
import type { RandomSource } from '../../src/statistics/random.ts';
import { dimensionInfo, dimensions } from '../../src/units/dimension.ts';
import { findUnit } from '../../src/units/unit-table.ts';
import { type Slip, type SlipKind, scalarSlip } from './slip.ts';

/** A number in a text, as it is written. */
interface Digits {
  readonly start: number;
  readonly digits: string;
}

interface Written {
  readonly profile: AnyProfile;
  readonly leaf: Leaf<QuantityShape>;
  readonly text: string;
  /** One number, the two ends of a range, or none where only a unit stands. */
  readonly numbers: readonly Digits[];
  readonly unit: string;
}

/** All slips in the numbers and units of a profile. */
export function quantitySlips(profile: AnyProfile, random: RandomSource): Slip[] {
  return [...leavesOf('quantity', shapes[profile.kind], profile.written)]
    .filter(({ value }) => typeof value === 'string')
    .map((leaf) => writtenQuantity(profile, leaf))
    .flatMap((quantity) => [
      ...foreignUnit(quantity, random),
      ...otherUnit(quantity),
      ...fahrenheit(quantity),
      ...swappedEnds(quantity),
      ...quantity.numbers.flatMap((number) => numberSlips(quantity, number)),
    ]);
}

function writtenQuantity(profile: AnyProfile, leaf: Leaf<QuantityShape>): Written {
  const text = String(leaf.value);
  if (leaf.shape.form === 'unit') return { profile, leaf, text, numbers: [], unit: text };
  const [, low = '', dots = '', high = '', unit = ''] =
    /^(-?\d+(?:\.\d+)?)(?:(\.\.)(-?\d+(?:\.\d+)?))? ?(.*)$/.exec(text) ?? [];
  const first = { start: 0, digits: low };
  const second = { start: low.length + dots.length, digits: high };
  return { profile, leaf, text, numbers: dots === '' ? [first] : [first, second], unit };
}

/** The slip that leaves `after` where the quantity stood; quoted where a flow mapping would break on a unit. */
function slip(kind: SlipKind, { profile, leaf }: Written, after: string): Slip[] {
  return scalarSlip(kind, profile, leaf.path, /[[\]{}]/.test(after) ? `'${after}'` : after);
}

function foreignUnit(quantity: Written, random: RandomSource): Slip[] {
  const foreign = dimensions
    .map((dimension) => dimensionInfo[dimension].usualUnit)
    .filter((unit) => findUnit(unit, quantity.leaf.shape.dimension) === undefined);
  const unit = foreign[Math.floor(random.uniform() * foreign.length)];
  return unit === undefined ? [] : withUnit('unit of another dimension', quantity, unit);
}

function withUnit(kind: SlipKind, quantity: Written, unit: string): Slip[] {
  return slip(kind, quantity, quantity.text.slice(0, quantity.text.length - quantity.unit.length) + unit);
}

const mistaken: Readonly<Record<string, readonly [SlipKind, string]>> = {
  'mm/s': ['mm/min or cm3/h', 'mm/min'],
  'mm3/s': ['mm/min or cm3/h', 'cm3/h'],
  mm: ['m for mm', 'm'],
};

function otherUnit(quantity: Written): Slip[] {
  const found = mistaken[quantity.unit];
  return found === undefined ? [] : withUnit(found[0], quantity, found[1]);
}

function fahrenheit(quantity: Written): Slip[] {
  if (quantity.leaf.shape.dimension !== 'temperature' || quantity.unit !== 'Cel') return [];
  const values = quantity.numbers.map(({ digits }) => plain(Number(digits) * 1.8 + 32));
  return slip('Fahrenheit under Cel', quantity, `${values.join('..')} Cel`);
}

function swappedEnds(quantity: Written): Slip[] {
  const [low, high] = quantity.numbers;
  if (low === undefined || high === undefined || Number(low.digits) === Number(high.digits)) return [];
  return slip('ends swapped', quantity, `${high.digits}..${low.digits} ${quantity.unit}`);
}

function numberSlips(quantity: Written, number: Digits): Slip[] {
  const value = Number(number.digits);
  const typed = (kind: SlipKind, digits: string): Slip[] =>
    slip(
      kind,
      quantity,
      quantity.text.slice(0, number.start) +
        digits +
        quantity.text.slice(number.start + number.digits.length),
    );
  return [
    ...(value === 0
      ? []
      : [
          ...typed('x10', plain(value * 10)),
          ...typed('/10', plain(value / 10)),
          ...typed('x1000', plain(value * 1000)),
        ]),
    ...transpositions(number.digits).flatMap((digits) =>
      typed(Math.abs(Number(digits) / value - 1) > 0.3 ? 'transposed > 30 %' : 'transposed, smaller', digits),
    ),
    ...withComma(number.digits).flatMap((digits) => typed('comma', digits)),
  ];
}

function plain(value: number): string {
  return String(Number(value.toPrecision(12)));
}

/** The number with each two different neighbouring digits exchanged. */
function transpositions(digits: string): string[] {
  return [...digits.slice(1)].flatMap((right, index) => {
    const left = digits.charAt(index);
    if (left === right || !/\d/.test(left) || !/\d/.test(right)) return [];
    return [digits.slice(0, index) + right + left + digits.slice(index + 2)];
  });
}

function withComma(digits: string): string[] {
  if (digits.includes('.')) return [digits.replace('.', ',')];
  return digits.length > 3 ? [`${digits.slice(0, -3)},${digits.slice(-3)}`] : [];
}
