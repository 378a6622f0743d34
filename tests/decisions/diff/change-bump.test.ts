import { describe, expect, it } from 'vitest';
import { bumpOfChange, safeDirectionOf } from '../../../src/decisions/diff/change-bump.ts';
import type { QuantityShape } from '../../../src/registry/shape.ts';

const range = (low: number, high: number) => ({ low, high });

it.each([
  ['below', 43, 40, 'major'],
  ['below', 43, 45, 'minor'],
  ['below', 43, 43, 'patch'],
  ['below', range(320, 350), range(320, 340), 'major'],
  ['below', range(320, 350), range(325, 350), 'minor'],
  ['above', 5, 6, 'major'],
  ['above', 5, 4, 'minor'],
  ['above', 0.1, 0.1, 'patch'],
  ['within', range(200, 235), range(200, 230), 'major'],
  ['within', range(200, 235), range(205, 235), 'major'],
  ['within', range(200, 235), range(195, 235), 'minor'],
  ['within', range(200, 235), range(195, 230), 'major'],
  ['within', range(200, 235), range(200, 235), 'patch'],
  ['same', 0.4, 0.6, 'major'],
  ['same', 'brass', 'hardenedSteel', 'major'],
  ['same', 0.4, 0.4, 'patch'],
  ['present', true, false, 'major'],
  ['present', false, true, 'minor'],
  ['present', true, true, 'patch'],
  ['present', 'doorOpen', 'vibration', 'major'],
  ['any', 1.24, 1.25, 'minor'],
  ['unused', 'old', 'new', 'patch'],
] as const)('what is safe %s and goes from %j to %j is %s', (safe, base, head, bump) => {
  expect(bumpOfChange(safe, { value: base }, { value: head })).toBe(bump);
});

it.each([
  ['below', 'minor', 'major'],
  ['above', 'minor', 'major'],
  ['within', 'minor', 'major'],
  ['present', 'minor', 'major'],
  ['same', 'major', 'major'],
  ['any', 'minor', 'minor'],
  ['unused', 'patch', 'patch'],
] as const)('what is safe %s is %s when it comes, and %s when it goes', (safe, comes, goes) => {
  expect(bumpOfChange(safe, null, { value: 1 })).toBe(comes);
  expect(bumpOfChange(safe, { value: 1 }, null)).toBe(goes);
});

describe('where the schema does not say what is safe', () => {
  const quantity = (form: 'single' | 'range'): QuantityShape => ({
    type: 'quantity',
    dimension: 'speed',
    form,
  });

  it('a range is to be stayed within, a quantity to be kept, and a word is not used', () => {
    expect(safeDirectionOf('machine', 'new.range', quantity('range'))).toBe('within');
    expect(safeDirectionOf('machine', 'new.speed', quantity('single'))).toBe('same');
    expect(safeDirectionOf('machine', 'name', null)).toBe('unused');
  });
});

it('takes from the schema what it says', () => {
  expect(safeDirectionOf('machine', 'hotEnds[].meltFlow', null)).toBe('below');
  expect(safeDirectionOf('filament', 'dryingTime', null)).toBe('above');
  expect(safeDirectionOf('job', 'features.infill.pathLength', null)).toBe('any');
});
