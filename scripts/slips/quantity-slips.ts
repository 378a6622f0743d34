import { shapes } from '../../src/registry/generated/shapes.ts';
import type { AnyProfile } from '../../src/registry/profile.ts';
import { type Leaf, leavesOf, type QuantityShape } from '../../src/registry/shape.ts';
import type { RandomSource } from '../../src/statistics/random.ts';
import type { Slip } from './slip.ts';
import type { SlipKind } from './slip-kinds.ts';
import { unitSlips } from './unit-slips.ts';
import { type Digits, plainNumber, slipIn, type WrittenQuantity, withNumbers } from './written-quantity.ts';

/** All slips in the numbers and units of a profile. */
export function quantitySlips(profile: AnyProfile, random: RandomSource): Slip[] {
  return writtenQuantities(profile).flatMap((quantity) => [
    ...unitSlips(quantity, random),
    ...swappedEnds(quantity),
    ...belowZero(quantity),
    ...quantity.numbers.flatMap((number) => numberSlips(quantity, number)),
  ]);
}

/** Every quantity of a profile, as it is written. */
export function writtenQuantities(profile: AnyProfile): WrittenQuantity[] {
  return [...leavesOf('quantity', shapes[profile.kind], profile.written)]
    .filter(({ value }) => typeof value === 'string')
    .map((leaf) => writtenQuantity(profile, leaf));
}

function writtenQuantity(profile: AnyProfile, leaf: Leaf<QuantityShape>): WrittenQuantity {
  const text = String(leaf.value);
  if (leaf.shape.form === 'unit') return { profile, leaf, text, numbers: [], unit: text };
  const [, low = '', dots = '', high = '', unit = ''] =
    /^(-?\d+(?:\.\d+)?)(?:(\.\.)(-?\d+(?:\.\d+)?))? ?(.*)$/.exec(text) ?? [];
  const first = { start: 0, digits: low };
  const second = { start: low.length + dots.length, digits: high };
  return { profile, leaf, text, numbers: dots === '' ? [first] : [first, second], unit };
}

function swappedEnds(quantity: WrittenQuantity): Slip[] {
  const [low, high] = quantity.numbers;
  if (low === undefined || high === undefined || Number(low.digits) === Number(high.digits)) return [];
  return slipIn('ends swapped', quantity, `${high.digits}..${low.digits} ${quantity.unit}`);
}

/** Dimensions whose quantities may be below zero. */
const signed = ['temperature', 'temperatureDifference', 'soundLevel', 'angle'];

/** Keys at which nothing would mean that there is no such thing. */
const neverZero =
  /^(?:filamentDiameter|diameter|density|heaterPower|meltZoneLength|topSpeed|acceleration|spoolMass|meltFlow|layerHeight|lineWidth|pathLength|meanSegment|mass)$/;

function belowZero(quantity: WrittenQuantity): Slip[] {
  const { leaf, numbers, unit } = quantity;
  if (numbers.length === 0) return [];
  if (signed.includes(leaf.shape.dimension) || numbers.some(({ digits }) => Number(digits) <= 0)) return [];
  const key = leaf.path.findLast((step) => typeof step === 'string' && step !== 'value');
  const below = slipIn(
    'below zero',
    quantity,
    withNumbers(quantity, (value) => -value),
  );
  return numbers.length === 1 && neverZero.test(String(key))
    ? [...below, ...slipIn('zero', quantity, `0 ${unit}`)]
    : below;
}

function numberSlips(quantity: WrittenQuantity, number: Digits): Slip[] {
  const value = Number(number.digits);
  const typed = (kind: SlipKind, digits: string): Slip[] =>
    slipIn(
      kind,
      quantity,
      quantity.text.slice(0, number.start) +
        digits +
        quantity.text.slice(number.start + number.digits.length),
    );
  const byTen = (kind: SlipKind, factor: number) =>
    value === 0 ? [] : typed(kind, plainNumber(value * factor));
  return [
    ...byTen('x10', 10),
    ...byTen('/10', 0.1),
    ...byTen('x1000', 1000),
    ...transpositions(number.digits).flatMap((digits) =>
      typed(isFar(digits, value) ? 'transposed > 30 %' : 'transposed, smaller', digits),
    ),
    ...lostDigits(number.digits).flatMap((digits) => typed('digit lost', digits)),
    ...[...number.digits].flatMap((digit, at) =>
      /\d/.test(digit)
        ? typed('digit doubled', number.digits.slice(0, at) + digit + number.digits.slice(at))
        : [],
    ),
    ...withComma(number.digits).flatMap((digits) => typed('decimal comma', digits)),
    ...(quantity.numbers.length === 1 ? slipIn('number without unit', quantity, number.digits) : []),
  ];
}

/** Whether digits stand for a value more than 30 % away from another one. */
export function isFar(digits: string, value: number): boolean {
  return Math.abs(Number(digits) / value - 1) > 0.3;
}

/** The number with each two different neighbouring digits exchanged. */
export function transpositions(digits: string): string[] {
  return [...digits.slice(1)].flatMap((right, index) => {
    const left = digits.charAt(index);
    if (left === right || !/\d/.test(left) || !/\d/.test(right)) return [];
    return [digits.slice(0, index) + right + left + digits.slice(index + 2)];
  });
}

function lostDigits(digits: string): string[] {
  if (digits.replaceAll(/\D/g, '').length < 2) return [];
  return [...digits].flatMap((digit, at) =>
    /\d/.test(digit) ? [digits.slice(0, at) + digits.slice(at + 1)] : [],
  );
}

function withComma(digits: string): string[] {
  if (digits.includes('.')) return [digits.replace('.', ',')];
  return digits.length > 3 ? [`${digits.slice(0, -3)},${digits.slice(-3)}`] : [];
}
