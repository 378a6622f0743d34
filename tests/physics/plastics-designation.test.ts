import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type PlasticsDesignation,
  parsePlasticsDesignation,
} from '../../src/physics/plastics-designation.ts';

function read(text: string): PlasticsDesignation {
  const result = parsePlasticsDesignation(text);
  if (!result.ok) {
    throw new Error(result.error.message);
  }
  return result.value;
}

function summary(text: string): string {
  const { polymers, fillers, massFraction } = read(text);
  const parts = fillers.map((filler) => `${filler.symbol} ${filler.massFraction ?? '?'}`);
  return `${polymers.join(' & ')} | ${parts.join(' & ')} | ${massFraction ?? '?'}`;
}

describe('parsePlasticsDesignation reads', () => {
  it.each([
    ['PLA', 'PLA |  | 0'],
    ['PA6-CF20', 'PA6 | CF 0.2 | 0.2'],
    ['PLA-WD20', 'PLA | WD 0.2 | 0.2'],
    ['PA66-GF30', 'PA66 | GF 0.3 | 0.3'],
    ['PET-G', 'PET-G |  | 0'],
    ['PS-HI', 'PS-HI |  | 0'],
    ['PC+ABS', 'PC & ABS |  | 0'],
    ['PA6/66', 'PA6/66 |  | 0'],
    ['PC+ABS-GF20', 'PC & ABS | GF 0.2 | 0.2'],
    ['(PC+ABS)-GF20', 'PC & ABS | GF 0.2 | 0.2'],
    ['PC+PET-G', 'PC & PET-G |  | 0'],
    ['PET-G-CF15', 'PET-G | CF 0.15 | 0.15'],
    ['PP-(GF25+MD15)', 'PP | GF 0.25 & MD 0.15 | 0.4'],
    ['PP-(GF+MD)40', 'PP | GF ? & MD ? | 0.4'],
    ['PP-(GF25+MD)', 'PP | GF 0.25 & MD ? | ?'],
    ['PLA-MED(Cu)40', 'PLA | MED(Cu) 0.4 | 0.4'],
    ['PLA-(WD10+MED(Al)20)', 'PLA | WD 0.1 & MED(Al) 0.2 | 0.3'],
    ['PA12-CF', 'PA12 | CF ? | ?'],
    ['PE-MD', 'PE-MD |  | 0'],
    ['PP-MD', 'PP | MD ? | ?'],
    ['TPU-ARES', 'TPU-ARES |  | 0'],
  ])('%s', (text, expected) => {
    expect(summary(text)).toBe(expected);
  });

  it('any whole percentage from 1 to 99', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 99 }), (percent) => {
        expect(read(`PA6-GF${percent}`).massFraction).toBe(percent / 100);
      }),
    );
  });
});

describe('parsePlasticsDesignation refuses', () => {
  it.each([
    ['', 'empty', []],
    ['  ', 'empty', []],
    ['PA6 - CF20', 'spaces', ['PA6-CF20']],
    ['pla', 'lowerCase', ['PLA']],
    ['Pa6-Cf20', 'lowerCase', ['PA6-CF20']],
    ['PA6–CF20', 'characters', []],
    ['PLA-CF12.5', 'characters', []],
    ['PVA', 'ambiguousPolymer', ['PVAL', 'PVAC']],
    ['PETG-CF10', 'tradeWriting', ['PET-G-CF10']],
    ['HIPS', 'tradeWriting', ['PS-HI']],
    ['PLA+', 'polymerSymbol', []],
    ['66PA', 'polymerSymbol', []],
    ['(PC+ABS', 'polymerSymbol', []],
    ['PLA-', 'fillerSymbol', []],
    ['PA6-20CF', 'fillerSymbol', []],
    ['PA6-FG30', 'fillerSymbol', []],
    ['PLA-CF150', 'massFraction', []],
    ['PLA-CF100', 'massFraction', []],
    ['PLA-CF0', 'massFraction', []],
    ['PP-(GF60+MD40)', 'massFraction', []],
    ['PP-(GF10+MD10)20', 'massFraction', []],
    ['PA6-GF30+MD10', 'fillerMixture', ['PA6-(GF30+MD10)']],
    ['PA6-GF30-MD10', 'fillerMixture', ['PA6-(GF30+MD10)']],
    ['PA6-GF30+PA66', 'fillerMixture', []],
    ['(PC+ABS)-GF10+MD5', 'fillerMixture', []],
    ['(PC+ABS-GF10)-MD5', 'fillerMixture', []],
  ])('"%s" as %s', (text, code, suggestions) => {
    const result = parsePlasticsDesignation(text);
    expect(result.ok ? undefined : result.error).toMatchObject({ code, suggestions });
  });

  it('without ever throwing', () => {
    const piece = fc.constantFrom(
      'PA6',
      'PC',
      'GF',
      'MED(Al)',
      '30',
      '-',
      '+',
      '(',
      ')',
      '/',
      'x',
      ' ',
      '$',
      '-G',
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.array(piece).map((parts) => parts.join('')),
        ),
        (text) => {
          const result = parsePlasticsDesignation(text);
          expect(result.ok ? result.value.polymers.length : result.error.message.length).toBeGreaterThan(0);
        },
      ),
    );
  });

  it('offers only designations that it reads itself', () => {
    for (const text of ['PVA-CF10', 'pla-wd20', 'HIPS', 'PA6-GF30+MD10']) {
      const result = parsePlasticsDesignation(text);
      const suggestions = result.ok ? [] : result.error.suggestions;
      expect(suggestions.length).toBeGreaterThan(0);
      for (const suggestion of suggestions) {
        expect(parsePlasticsDesignation(suggestion).ok).toBe(true);
      }
    }
  });
});
