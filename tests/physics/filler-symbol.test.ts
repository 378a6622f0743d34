import { describe, expect, it } from 'vitest';
import { readFillerSymbol } from '../../src/physics/filler-symbol.ts';

describe('readFillerSymbol', () => {
  it.each([
    ['GF', 'G', ['F']],
    ['CF', 'C', ['F']],
    ['WD', 'W', ['D']],
    ['GCM', 'G', ['C', 'M']],
    ['MD', 'M', ['D']],
    ['MED', 'ME', ['D']],
  ])('%s has material %s and forms %s', (text, material, forms) => {
    expect(readFillerSymbol(text)).toEqual({ symbol: text, material, forms, metal: undefined });
  });

  it('reads the chemical symbol of a metal', () => {
    expect(readFillerSymbol('MED(CuSn)')?.metal).toBe('CuSn');
  });

  it.each(['', 'G', 'HI', 'FG', 'GE', 'GF(Al)', 'gf', 'GF30', 'MED()', 'GFFF'])('"%s" is none', (text) => {
    expect(readFillerSymbol(text)).toBeUndefined();
  });
});
