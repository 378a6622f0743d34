import { describe, expect, it } from 'vitest';
import { abrasion, abrasionOfNozzle } from '../../src/physics/abrasion.ts';
import { fillerHardness, nozzleHardness } from '../../src/physics/hardness.ts';

describe('abrasion', () => {
  it.each([
    [50, 100, 'mild'],
    [109, 100, 'mild'],
    [115, 100, 'transition'],
    [121, 100, 'severe'],
  ])('%d HV against %d HV: %s', (filler, nozzle, judgement) => {
    expect(abrasion(filler, nozzle)).toBe(judgement);
  });
});

describe('abrasionOfNozzle', () => {
  it.each([
    ['G', 'brass', 'severe'],
    ['G', 'stainlessSteel', 'severe'],
    ['G', 'platedBrass', 'severe'],
    ['G', 'copper', 'severe'],
    ['G', 'hardenedSteel', 'mild'],
    ['C', 'brass', 'severe'],
    ['C', 'ruby', 'mild'],
    ['W', 'brass', 'mild'],
    ['T', 'brass', 'mild'],
    ['K', 'brass', 'transition'],
    ['Q', 'hardenedSteel', 'severe'],
    ['Q', 'carbide', 'mild'],
  ] as const)('filler %s in a nozzle of %s: %s', (filler, nozzle, judgement) => {
    expect(abrasionOfNozzle(filler, nozzle)).toBe(judgement);
  });

  it('cannot judge a filler that may be anything', () => {
    expect(abrasionOfNozzle('M', 'brass')).toBeUndefined();
    expect(fillerHardness('ME')).toBeUndefined();
  });
});

describe('nozzleHardness', () => {
  it('holds ordered ranges with a source', () => {
    for (const range of Object.values(nozzleHardness)) {
      expect(range.low).toBeLessThanOrEqual(range.high);
      expect(range.source).not.toBe('');
    }
  });
});
