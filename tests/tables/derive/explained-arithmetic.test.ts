import { describe, expect, it } from 'vitest';
import { formatRowExplanation } from '../../../src/tables/derive/explain-row.ts';
import type { SpeedRow, SpeedTable } from '../../../src/tables/derive/speed-table.ts';
import { fullFigures, meltLimit, type PairingFigures, registryWith, tableWith } from './pairing-with.ts';

/** What a formula with its numbers gives, worked out from the printed text alone. */
function evaluated(printed: string): number {
  const expression = printed
    .replaceAll('^', '**')
    .replace(/\b(sqrt|min)\b/g, 'Math.$1')
    .replace(/\bpi\b/g, 'Math.PI');
  if (!/^[\d\s.e+\-*/(),]*$/.test(expression.replace(/Math\.(sqrt|min|PI)/g, ''))) return Number.NaN;
  return Number(new Function(`return ${expression}`)());
}

interface Step {
  readonly symbol: string;
  readonly printed: string;
  readonly result: number;
}

/** The steps of an explanation: `  v = Q * (1 - m) / A = 44.5 * (1 - 0.1) / 0.18 = 224 mm/s`. */
function stepsOf(text: string): Step[] {
  return [...text.matchAll(/^ {2}(\w+) = (.+)$/gm)].flatMap(([, symbol = '', chain = '']) => {
    const parts = chain.split(' = ');
    const result = Number.parseFloat(parts.at(-1) ?? '');
    return symbol === 'T'
      ? []
      : [{ symbol, printed: parts.length > 2 ? (parts[1] ?? '') : (parts.at(-1) ?? ''), result }];
  });
}

const measured = (value: number, temperature: number) => ({
  ...meltLimit(value, temperature),
  interval: { low: value - 0.5, high: value + 0.5 },
});

const { hotEnds } = registryWith({}).machine.get('plumstead/wren')!.data;
const driveForce = [{ value: 60, basis: 'claimed', source: 'plumstead-wren-sheet' }] as const;

const figures: PairingFigures = {
  ...fullFigures,
  machine: { hotEnds: hotEnds.map((hotEnd) => ({ ...hotEnd, driveForce: [...driveForce] })) },
  filament: { ...fullFigures.filament, meltFlow: [measured(20, 205), measured(24, 215), measured(26, 230)] },
};

describe.each<[string, SpeedTable]>([
  ['at a tested temperature', tableWith(figures)],
  ['between tested temperatures', tableWith(figures, { temperature: 222 })],
  ['with beads of one’s own', tableWith(figures, { layerHeights: [{ millimetres: 0.22 }] })],
])('the arithmetic of every row %s', (_, table) => {
  const explained = (row: SpeedRow) => formatRowExplanation(registryWith(figures), table, row);

  it('gives what its formulas give with the numbers that are printed', () => {
    for (const row of table.rows) {
      for (const { symbol, printed, result } of stepsOf(explained(row))) {
        const value =
          /[a-z(*/+]/i.test(printed) && !/ [a-z]/i.test(printed.replace(/\b(sqrt|min|pi)\b/g, ''))
            ? evaluated(printed)
            : Number.parseFloat(printed);
        expect([symbol, printed, Math.abs(value / result - 1) < 1e-4]).toEqual([symbol, printed, true]);
      }
    }
  });

  it('holds every bound of the row, and the speed that follows from the least', () => {
    for (const row of table.rows) {
      const speeds = stepsOf(explained(row)).filter(({ symbol }) => symbol === 'v');
      expect(speeds).toHaveLength(row.bounds.length + 1);
      for (const [index, { speed, share }] of row.bounds.entries()) {
        expect(speeds[index]!.result / speed).toBeCloseTo(1, 4);
        expect(row.speed).toBeLessThanOrEqual(speed * share * (1 + 1e-9));
      }
      expect(row.speed).toBeLessThanOrEqual(speeds.at(-1)!.result * (1 + 1e-4));
    }
  });
});
