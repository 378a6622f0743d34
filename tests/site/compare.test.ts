import { describe, expect, it } from 'vitest';
import { wayFrom } from '../../src/site/address.ts';
import type { ComparedPairing } from '../../src/site/compare/compared-pairing.ts';
import {
  comparisonTable,
  differenceWords,
  overlaidLadders,
  unequalConditions,
} from '../../src/site/compare/comparison-view.ts';

function compared(
  title: string,
  limit: number,
  interval: readonly [number, number] | null,
  temperature: string,
): ComparedPairing {
  return {
    page: `pairings/${title}.html`,
    title,
    flow: { limit, interval: interval === null ? null : { low: interval[0], high: interval[1] } },
    facts: [
      { name: 'Nozzle temperature', value: temperature, isCondition: true },
      { name: 'Batch', value: '26-0117', isCondition: true },
      { name: 'Bed', value: temperature, isCondition: false },
    ],
    ladders: [],
    figures: null,
    origin: null,
  };
}

const wren = compared('wren', 30, [29, 31], '230 °C');
const robin = compared('robin', 41.4, [40, 43], '240 °C');
const finch = compared('<b>finch</b>', 30.6, [30, 31.5], '230 °C');
const text = (markup: string) => markup.replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ');

describe('a comparison', () => {
  it('says by how much a limit differs, and whether that is more than chance', () => {
    expect(differenceWords(wren, robin)).toBe('+38 %, intervals apart');
    expect(differenceWords(robin, wren)).toBe('−28 %, intervals apart');
    expect(differenceWords(wren, finch)).toBe('+2 %, intervals overlap');
    expect(differenceWords(wren, compared('x', 30.1, null, ''))).toBe(
      'the same within 1 %, not known whether by chance',
    );
  });

  it('marks the conditions that differ, and those alone', () => {
    expect(unequalConditions([wren, robin])).toEqual(['Nozzle temperature']);
    expect(unequalConditions([wren, finch])).toEqual([]);
    const shown = text(comparisonTable([wren, robin], wayFrom('compare.html')).markup);
    expect(shown).toContain('Nozzle temperature (unequal condition) 230 °C 240 °C');
    expect(shown).toContain('Batch 26-0117 26-0117');
    expect(shown).toContain('Bed 230 °C 240 °C');
    expect(shown).toContain(
      'Melt flow limit 30.0 mm³/s, 29.0 to 31.0 41.4 mm³/s, 40.0 to 43.0 (+38 %, intervals apart)',
    );
  });

  it('shows what a name says as text', () => {
    expect(comparisonTable([finch], wayFrom('compare.html')).markup).toContain('&lt;b&gt;finch&lt;/b&gt;');
  });

  it('overlays the ladders, each pairing by a dash and a marker of its own, in per cent', () => {
    const curve = {
      ...({
        x: { quantity: 'commandedFlow', dimension: 'volumeFlow' },
        y: { quantity: 'deficit', dimension: 'ratio' },
      } as const),
      ...{
        readings: [{ x: 20, y: 0.01 }],
        fit: [
          { x: 20, y: 0.01 },
          { x: 40, y: 0.1 },
        ],
      },
      ...{ band: [{ x: 20, low: 0, high: 0.02 }], threshold: 0.05, limits: [] },
    };
    const withLadder = (pairing: ComparedPairing) => ({ ...pairing, ladders: [{ trial: 'a', curve }] });
    const plot = overlaidLadders([withLadder(wren), withLadder(robin)]);
    const lines = plot?.marks.filter(({ kind }) => kind === 'line') ?? [];
    expect(lines).toMatchObject([
      { label: 'wren', style: 'solid', points: [{ y: 1 }, { y: 10 }] },
      { label: 'robin', style: 'dashed' },
    ]);
    expect(plot?.marks.filter(({ kind }) => kind === 'level')).toMatchObject([
      { at: 5, label: 'accepted 5.0 %' },
    ]);
    expect(overlaidLadders([wren, robin])).toBeNull();
  });
});
