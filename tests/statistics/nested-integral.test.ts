import { describe, expect, test } from 'vitest';
import { integrateNested, type NestedLine } from '../../src/statistics/nested-integral.ts';

const axis = (center: number, spread: number) => ({
  low: -50,
  high: 50,
  center,
  spread,
  spacing: 0.8,
  cliff: 2,
});

/** Logarithm of a normal density. */
const normal = (x: number, mean: number, deviation: number) =>
  -0.5 * ((x - mean) / deviation) ** 2 - Math.log(deviation * Math.sqrt(2 * Math.PI));

function along(
  log: (point: readonly number[]) => number,
  aside: (point: readonly number[]) => number = () => 0,
) {
  return (outer: readonly number[]) => (last: number) => {
    const point = [...outer, last];
    return { at: last, log: log(point), aside: aside(point), inner: null };
  };
}

describe('one coordinate', () => {
  const integrate = (log: (x: number) => number, center = 0, spread = 1) =>
    integrateNested({ axes: [axis(center, spread)], along: along(([x = 0]) => log(x)) })!;

  test('a normal density has the integral 1, its mean and its standard deviation', () => {
    const { logIntegral, mean, spread } = integrate((x) => normal(x, 4, 0.3));
    expect(Math.abs(logIntegral)).toBeLessThan(0.04);
    expect(Math.abs(mean - 4)).toBeLessThan(0.05 * 0.3);
    expect(Math.abs(spread / 0.3 - 1)).toBeLessThan(0.1);
  });

  test.each([
    ['far too narrow', 0, 0.001],
    ['far too wide', 3, 40],
    ['far away', -30, 0.2],
  ])('a guess that is %s makes no difference', (_, center, spread) => {
    const found = integrate((x) => normal(x, 4, 0.3), center, spread);
    expect(Math.abs(found.logIntegral)).toBeLessThan(0.05);
    expect(Math.abs(found.mean - 4)).toBeLessThan(0.05 * 0.3);
  });

  test('long tails are followed', () => {
    // Logistic density, whose standard deviation is π/√3.
    const { logIntegral, spread } = integrate((x) => -Math.abs(x) - 2 * Math.log1p(Math.exp(-Math.abs(x))));
    expect(logIntegral).toBeCloseTo(0, 1);
    expect(spread / (Math.PI / Math.sqrt(3))).toBeCloseTo(1, 1);
  });

  test('a density that breaks off is cut there', () => {
    const { logIntegral } = integrate((x) => (x < 0 ? Number.NEGATIVE_INFINITY : normal(x, 0, 1)), 1);
    expect(logIntegral).toBeCloseTo(Math.log(0.5), 0);
  });

  test('ends with the axis', () => {
    const half = { ...axis(1, 1), low: 0 };
    const found = integrateNested({ axes: [half], along: along(([x = 0]) => normal(x, 0, 1)) })!;
    expect(found.logIntegral).toBeCloseTo(Math.log(0.5), 1);
    expect(found.nodes[0]!.at).toBe(0);
  });

  test('a density of 0 has no integral', () => {
    expect(integrateNested({ axes: [axis(0, 1)], along: along(() => Number.NEGATIVE_INFINITY) })).toBeNull();
  });
});

describe('several coordinates', () => {
  /** x about 1, y about 2x, z about y, each given the one before. */
  const chain = ([x = 0, y = 0, z = 0]: readonly number[]) =>
    normal(x, 1, 0.5) + normal(y, 2 * x, 0.2) + normal(z, y, 1);
  const axes = [axis(0, 1), axis(0, 1), axis(0, 1)];

  test('a chain of normal densities has the integral 1, and its means', () => {
    const found = integrateNested({ axes, along: along(chain, ([, , z = 0]) => z) })!;
    expect(found.logIntegral).toBeCloseTo(0, 1);
    expect(found.mean).toBeCloseTo(1, 2);
    expect(found.spread).toBeCloseTo(0.5, 1);
    expect(found.aside).toBeCloseTo(2, 2);
  });

  test('a scale of the density or of a coordinate goes through', () => {
    const once = integrateNested({ axes, along: along(chain) })!;
    const louder = integrateNested({ axes, along: along((point) => chain(point) + 7) })!;
    expect(louder.logIntegral - once.logIntegral).toBeCloseTo(7, 9);
    const wider = integrateNested({
      axes: [{ ...axis(0, 10), low: -500, high: 500 }, axes[1]!, axes[2]!],
      along: along(([x = 0, ...rest]) => chain([x / 10, ...rest])),
    })!;
    expect(wider.logIntegral - once.logIntegral).toBeCloseTo(Math.log(10), 9);
    expect(wider.mean).toBeCloseTo(10 * once.mean, 6);
  });

  test('an innermost node is what the density gave for its place, and has no line inside', () => {
    const found = integrateNested({ axes, along: along(chain) })!;
    const inner = found.nodes[3]!.inner!;
    const innermost = inner.nodes[2]!.inner!.nodes[1]!;
    expect(innermost.log).toBe(chain([found.nodes[3]!.at, inner.nodes[2]!.at, innermost.at]));
    expect(innermost.inner).toBeNull();
  });

  test('rounding makes no difference', () => {
    const once = integrateNested({ axes, along: along(chain) })!;
    const nudged = integrateNested({ axes, along: along((point) => chain(point) * (1 + 1e-13)) })!;
    expect(placesOf(nudged)).toHaveLength(placesOf(once).length);
    expect(nudged.mean).toBeCloseTo(once.mean, 9);
  });
});

describe('lines that matter less', () => {
  const looksOf = (known?: number) => {
    let looks = 0;
    const counted = ([x = 0, y = 0]: readonly number[]) => {
      looks += 1;
      return normal(x, 3, 0.5) + normal(y, x, 0.2);
    };
    const found = integrateNested({ axes: [axis(0, 1), axis(0, 1)], along: along(counted) }, known)!;
    return { looks, found };
  };

  test('what is far below what is known already takes fewer looks', () => {
    expect(looksOf(30).looks).toBeLessThan(looksOf().looks);
    expect(looksOf(-30)).toEqual(looksOf());
  });

  test('lines on which nothing is possible count as 0', () => {
    const half = ([x = 0, y = 0]: readonly number[]) =>
      x < 0 ? Number.NEGATIVE_INFINITY : normal(x, 0, 1) + normal(y, x, 0.2);
    const found = integrateNested({
      axes: [axis(1, 1), axis(1, 1)],
      along: along(half, () => 5),
    })!;
    expect(found.logIntegral).toBeCloseTo(Math.log(0.5), 0);
    expect(found.aside).toBeCloseTo(5, 9);
    const empty = found.nodes.find(({ at }) => at < 0)!;
    expect(empty).toMatchObject({ log: Number.NEGATIVE_INFINITY, aside: 0, inner: null });
  });

  test('lines beside one another guess from each other: a long ridge takes few looks', () => {
    let looks = 0;
    const ridge = ([x = 0, y = 0]: readonly number[]) => {
      looks += 1;
      return normal(x, 0, 4) + normal(y, 10 * x, 0.1);
    };
    const wide = { ...axis(0, 4), low: -500, high: 500 };
    const found = integrateNested({
      axes: [wide, { ...axis(0, 1), low: -500, high: 500 }],
      along: along(ridge),
    })!;
    expect(found.logIntegral).toBeCloseTo(0, 0);
    expect(looks / found.nodes.length).toBeLessThan(60);
  });
});

/** All places of all lines. */
function placesOf({ nodes }: NestedLine): number[] {
  return nodes.flatMap(({ at, inner }) => (inner === null ? [at] : placesOf(inner)));
}
