import { describe, expect, it } from 'vitest';
import { fillerDensity } from '../../src/physics/filler-density.ts';
import { fillerMaterials, readFillerSymbol } from '../../src/physics/filler-symbol.ts';

function densityOf(symbol: string): ReturnType<typeof fillerDensity> {
  const filler = readFillerSymbol(symbol);
  expect(filler).toBeDefined();
  return filler && fillerDensity(filler);
}

describe('fillerDensity', () => {
  it('goes by the material, whatever the form', () => {
    expect(densityOf('GB')).toEqual(densityOf('GF'));
  });

  it('goes by the metal where the symbol tells it', () => {
    expect(densityOf('MED(Fe)')?.low).toBeCloseTo(7.87e-3, 12);
  });

  it.each(['MED', 'MED(Xx)', 'MD', 'XX', 'ZD'])('%s does not say enough', (symbol) => {
    expect(densityOf(symbol)).toBeUndefined();
  });

  it('is an ordered range between balsa and gold in g/mm3, with a source', () => {
    for (const material of Object.keys(fillerMaterials)) {
      const density = densityOf(`${material}D`);
      if (density !== undefined) {
        expect(density.low).toBeLessThanOrEqual(density.high);
        expect(density.low).toBeGreaterThan(1e-4);
        expect(density.high).toBeLessThan(1.93e-2);
        expect(density.source).not.toBe('');
      }
    }
  });
});
