import { expect, it } from 'vitest';
import { bumpOfChange } from '../../../src/decisions/diff/change-bump.ts';

const range = (low: number, high: number) => ({ low, high });

it.each([
  ['ceiling', 43, 40, 'major'],
  ['ceiling', 43, 45, 'minor'],
  ['ceiling', 43, 43, 'patch'],
  ['ceiling', range(320, 350), range(320, 340), 'major'],
  ['ceiling', range(320, 350), range(325, 350), 'minor'],
  ['floor', 5, 6, 'major'],
  ['floor', 5, 4, 'minor'],
  ['floor', 0.1, 0.1, 'patch'],
  ['window', range(200, 235), range(200, 230), 'major'],
  ['window', range(200, 235), range(205, 235), 'major'],
  ['window', range(200, 235), range(195, 235), 'minor'],
  ['window', range(200, 235), range(195, 230), 'major'],
  ['window', range(200, 235), range(200, 235), 'patch'],
  ['fixed', 0.4, 0.6, 'major'],
  ['fixed', 'brass', 'hardenedSteel', 'major'],
  ['fixed', 0.4, 0.4, 'patch'],
  ['ability', true, false, 'major'],
  ['ability', false, true, 'minor'],
  ['ability', true, true, 'patch'],
  ['figure', 1.24, 1.25, 'minor'],
  ['note', 'old', 'new', 'patch'],
] as const)('a %s that goes from %j to %j is %s', (sense, base, head, bump) => {
  expect(bumpOfChange(sense, { value: base }, { value: head })).toBe(bump);
});

it.each([
  ['ceiling', 'minor', 'major'],
  ['floor', 'minor', 'major'],
  ['window', 'minor', 'major'],
  ['member', 'minor', 'major'],
  ['fixed', 'major', 'major'],
  ['figure', 'minor', 'minor'],
  ['note', 'patch', 'patch'],
] as const)('a %s that comes is %s, one that goes is %s', (sense, comes, goes) => {
  expect(bumpOfChange(sense, null, { value: 1 })).toBe(comes);
  expect(bumpOfChange(sense, { value: 1 }, null)).toBe(goes);
});
