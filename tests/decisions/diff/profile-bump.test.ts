import { expect, it } from 'vitest';
import { bumpedVersion, highestBump, isBumpEnough } from '../../../src/decisions/diff/profile-bump.ts';

it.each([
  ['1.4.2', 'major', '2.0.0'],
  ['1.4.2', 'minor', '1.5.0'],
  ['1.4.2', 'patch', '1.4.3'],
  ['0.3.1', 'major', '1.0.0'],
] as const)('from %s a %s bump leads to %s', (version, bump, bumped) => {
  expect(bumpedVersion(version, bump)).toBe(bumped);
});

it.each([
  ['1.0.0', '1.0.0', 'patch', false],
  ['1.0.0', '1.0.1', 'patch', true],
  ['1.0.0', '1.0.9', 'minor', false],
  ['1.0.0', '1.1.0', 'minor', true],
  ['1.4.2', '1.9.0', 'major', false],
  ['1.4.2', '2.0.0', 'major', true],
  ['1.0.0', '3.2.1', 'patch', true],
  ['1.0.0', '1.0.0', null, true],
  ['1.1.0', '1.0.0', null, false],
  ['2.0.0', '1.9.9', 'patch', false],
] as const)('from %s to %s is a %s change: enough is %s', (base, head, bump, isEnough) => {
  expect(isBumpEnough(base, head, bump)).toBe(isEnough);
});

it('takes the gravest of several bumps', () => {
  expect(highestBump(['patch', null, 'major', 'minor'])).toBe('major');
  expect(highestBump([null])).toBeNull();
});
