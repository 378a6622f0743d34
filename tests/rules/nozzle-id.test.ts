import { expect, it } from 'vitest';
import { findingsAfter, wren } from './edited-sample.ts';

it('finds a nozzle whose id says another diameter', () => {
  const edit = { in: wren, from: '{id: hs-0.4, diameter: 0.4 mm', to: '{id: hs-0.4, diameter: 0.5 mm' };
  expect(findingsAfter(edit)).toEqual([
    `error consistency/nozzle-id ${wren} | - {id: hs-0.4, diameter: 0.5 mm, material: hardenedSteel}`,
  ]);
});

it('x', () => {
  expect(findingsAfter()).toEqual([]);
});
