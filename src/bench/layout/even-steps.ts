import { clean } from '../../units/round-to-step.ts';

/** 1, 2 or 5 times a power of ten, next to a positive number. */
export function roundStepSize(value: number, side: 'up' | 'down'): number {
  const power = 10 ** Math.floor(Math.log10(value) + 1e-9);
  const sizes = [1, 2, 5, 10].map((digit) => clean(digit * power));
  const slack = 1e-9 * power;
  const found =
    side === 'up'
      ? sizes.find((size) => size >= value - slack)
      : sizes.findLast((size) => size <= value + slack);
  return found ?? clean(power);
}

/** The multiples of a step from the `first` to the `last`, which are counts of steps. */
export function evenSteps(size: number, first: number, last: number): number[] {
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => clean((first + index) * size));
}
