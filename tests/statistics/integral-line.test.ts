import { describe, expect, test } from 'vitest';
import { integrateAlong } from '../../src/statistics/integral-line.ts';

const nothing = Number.NEGATIVE_INFINITY;

/** The integral of a density, given by its logarithm, and how often the density was asked. */
function integrated(
  log: (x: number) => number,
  { low = -1000, high = 1000, spacing = 0.8, cliff = 2, center = 0, spread = 1, floor = nothing } = {},
) {
  let looks = 0;
  const nodeAt = (at: number) => {
    looks += 1;
    return { at, log: log(at), aside: at ** 2 };
  };
  const line = integrateAlong(nodeAt, { low, high, spacing, cliff }, { center, spread }, floor);
  return { line, looks };
}

/** Logarithm of the standard normal density. */
const normal = (x: number) => -0.5 * x ** 2 - 0.5 * Math.log(2 * Math.PI);
const steps = (nodes: readonly { readonly at: number; readonly log: number }[]) =>
  nodes.slice(1).map((node, index) => ({ one: nodes[index]!, other: node }));

describe('ends of the axis', () => {
  test.each([0.1, 0.25, 0.5, 1])('an even density holds the length of its axis: center %f', (center) => {
    const { line } = integrated(() => 0, { low: 0, high: 1, center, spread: 0.3 });
    expect(line!.widths.reduce((sum, width) => sum + width, 0)).toBeCloseTo(1, 12);
    expect(line!.logIntegral).toBeCloseTo(0, 12);
    expect(line!.mean).toBeCloseTo(0.5, 12);
    expect(Math.abs(line!.spread - Math.sqrt(1 / 12))).toBeLessThan(0.04);
  });

  test('half a normal density at either end', () => {
    for (const side of [1, -1]) {
      const ends = side === 1 ? { low: 0 } : { high: 0 };
      const { line } = integrated(normal, { ...ends, center: side, spread: 0.6 });
      // Mean and variance of the half-normal density: √(2/π) and 1 - 2/π.
      expect(line!.logIntegral).toBeCloseTo(Math.log(0.5), 1);
      expect(line!.mean).toBeCloseTo(side * Math.sqrt(2 / Math.PI), 1);
      expect(line!.spread).toBeCloseTo(Math.sqrt(1 - 2 / Math.PI), 1);
    }
  });
});

describe('guesses', () => {
  const spreads = [0.003, 0.01, 0.03, 0.1, 0.3, 0.6, 1, 1.7, 2, 2.5, 3, 4, 6, 10, 30, 100];
  const centers = [-30, -9, -5, -2.3, 0, 0.7, 3, 6, 11, 60];

  test.each(spreads)('a spread of %f finds the normal density from anywhere, in few looks', (spread) => {
    for (const center of centers) {
      const { line, looks } = integrated(normal, { center, spread });
      expect(Math.abs(line!.logIntegral)).toBeLessThan(0.12);
      expect(Math.abs(line!.mean)).toBeLessThan(0.2);
      expect(Math.abs(line!.spread - 1)).toBeLessThan(0.1);
      expect(Math.abs(line!.aside - 1)).toBeLessThan(0.2);
      expect(looks).toBeLessThan(spread < 0.1 ? 75 : 45);
    }
  });

  test.each([1, 10, 40])('a long straight slope leads to its summit: spread %f', (spread) => {
    for (const center of [-300, -40, 40, 300]) {
      const { line, looks } = integrated((x) => -Math.abs(x) - Math.LN2, { center, spread });
      expect(Math.abs(line!.logIntegral)).toBeLessThan(0.2);
      expect(Math.abs(line!.mean)).toBeLessThan(0.3);
      expect(looks).toBeLessThan(110);
    }
  });

  test('it makes no difference where the axis has its 0', () => {
    // A ridge that is straight far out and round on top, whose bend misleads from afar.
    const hyperbola = (x: number) => -Math.sqrt(1 + x ** 2);
    for (const center of [-300, -20, 0.5, 80]) {
      const plain = integrated(hyperbola, { center });
      const moved = integrated((x) => hyperbola(x - 1024), { center: center + 1024, low: -4096, high: 4096 });
      expect(moved.looks).toBe(plain.looks);
      expect(moved.line!.logIntegral).toBeCloseTo(plain.line!.logIntegral, 9);
      expect(moved.line!.mean - 1024).toBeCloseTo(plain.line!.mean, 9);
      expect(moved.line!.spread).toBeCloseTo(plain.line!.spread, 9);
    }
  });

  test.each([1000, -1000])('a factor of e^%f makes no other difference', (factor) => {
    const { line } = integrated(normal, { center: 0.47 });
    const { line: scaled } = integrated((x) => normal(x) + factor, { center: 0.47 });
    expect(scaled!.logIntegral - line!.logIntegral).toBeCloseTo(factor, 9);
    expect(scaled!.mean).toBeCloseTo(line!.mean, 9);
    expect(scaled!.spread).toBeCloseTo(line!.spread, 9);
  });

  test('a density at one place alone is laid a dozen times, and counts as it is then', () => {
    const { line, looks } = integrated((x) => (x === 0 ? 0 : nothing));
    expect(line!.mean).toBe(0);
    expect(looks).toBeLessThan(12 * 20);
  });

  test.each([1, -1])('a slope that grows steeper is followed from the best place so far: side %i', (side) => {
    const asked: number[] = [];
    const steeper = (x: number) => {
      asked.push(x);
      return 0.01 * x ** 2;
    };
    integrated(steeper, { center: 100 * side });
    const again = asked.findIndex((place, index) => asked.indexOf(place) < index);
    expect(again).toBeGreaterThan(1);
    expect(side * asked[again]!).toBe(Math.max(...asked.slice(0, again).map((place) => side * place)));
  });

  test('a density that climbs without an end has no integral', () => {
    expect(integrated((x) => x, { low: nothing, high: Number.POSITIVE_INFINITY }).line).toBeNull();
  });

  test('only the outermost node on either side is negligible', () => {
    for (const center of [-7, -6, -5, -4, -3, 3, 4, 5, 6, 7]) {
      for (const spread of [1, 1.5, 2, 2.2]) {
        const { line } = integrated(normal, { center, spread, cliff: 1000 });
        const kept = line!.nodes.slice(1, -1).map(({ log }) => log);
        expect(Math.min(...kept)).toBeGreaterThanOrEqual(Math.max(...kept) - 5);
      }
    }
  });
});

describe('cliffs', () => {
  /** Laplace density, whose standard deviation is √2. */
  const laplace = (x: number) => -Math.abs(x) - Math.LN2;

  test.each([0.25, 0.5, 1])('neighbours near the peak differ by no more than %f', (cliff) => {
    const { line } = integrated(laplace, { cliff, center: 0.3 });
    const best = Math.max(...line!.nodes.map(({ log }) => log));
    for (const { one, other } of steps(line!.nodes)) {
      const isNear = Math.max(one.log, other.log) > best - 3;
      if (isNear) expect(Math.abs(one.log - other.log)).toBeLessThanOrEqual(cliff);
    }
    expect(Math.abs(line!.logIntegral)).toBeLessThan(0.08);
    expect(Math.abs(line!.spread / Math.SQRT2 - 1)).toBeLessThan(0.1);
  });

  test('a line that has none is looked at no more for it', () => {
    const { looks } = integrated(normal, { cliff: 1000 });
    expect(integrated(normal, { cliff: 4 }).looks).toBe(looks);
    expect(integrated(normal, { cliff: 0.2 }).looks).toBeGreaterThan(looks);
  });

  test('what is far from the peak is left as it is', () => {
    const { line } = integrated(laplace, { cliff: 0.1, center: 0.3 });
    const finest = Math.min(...steps(line!.nodes).map(({ one, other }) => other.at - one.at));
    const far = steps(line!.nodes).filter(
      ({ one, other }) => Math.max(one.log, other.log) < Math.log(0.5) - 3.5,
    );
    expect(far.length).toBeGreaterThan(0);
    for (const { one, other } of far) expect(other.at - one.at).toBeGreaterThan(3 * finest);
  });

  test.each([0, 0.13, 0.37, 0.61])('the edges of a box are found to an eighth of a step: %f', (shift) => {
    const box = (x: number) => (x < shift || x > shift + 4 ? nothing : 0);
    const { line } = integrated(box, { center: 2, spread: 1 });
    expect(Math.abs(Math.exp(line!.logIntegral) - 4)).toBeLessThanOrEqual(0.8 / 8);
    const { line: coarse } = integrated(box, { center: 2, spread: 1, cliff: Number.POSITIVE_INFINITY });
    expect(line!.nodes.length).toBe(coarse!.nodes.length + 6);
  });
});

describe('floors', () => {
  test('below one, fewer looks do', () => {
    const whole = integrated(normal, { center: 0.5, spread: 0.3 });
    const { line, looks } = integrated(normal, { center: 0.5, spread: 0.3, floor: 20 });
    expect(looks).toBeLessThan(whole.looks / 2);
    expect(line!.logIntegral).toBeLessThan(20);
  });

  test('one far below makes no difference', () => {
    const found = integrated(normal, { center: 0.5, floor: -40 });
    expect(found).toEqual(integrated(normal, { center: 0.5 }));
  });
});
