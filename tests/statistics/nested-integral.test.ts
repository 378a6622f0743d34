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

describe('where a line is looked at first', () => {
  test('is on the way that the two nearest lines take, or as on the nearest where those are too close', () => {
    const way = (x: number) => 10 * x ** 2;
    const deviation = 0.1;
    const firsts: { readonly x: number; readonly first: number }[] = [];
    const bent = (outer: readonly number[]) => {
      const [x = 0] = outer;
      let isFirst = true;
      return (y: number) => {
        if (isFirst) firsts.push({ x, first: y });
        isFirst = false;
        return { at: y, log: normal(x, 3, 0.5) + normal(y, way(x), deviation), aside: 0, inner: null };
      };
    };
    // The guess for the outer coordinate is so narrow that the distances of its nodes change.
    integrateNested({ axes: [axis(2.6, 0.02), { ...axis(60, 5), low: -500, high: 500 }], along: bent });
    expect(firsts.length).toBeGreaterThan(12);
    for (const [index, { x, first }] of firsts.entries()) {
      const known = firsts.slice(0, index).toSorted((a, b) => Math.abs(a.x - x) - Math.abs(b.x - x));
      const [one, two] = [known[0]?.x, known[1]?.x];
      if (one === undefined || two === undefined) continue;
      const isNear = Math.abs(x - one) <= 2 * Math.abs(one - two);
      const slope = isNear ? (way(one) - way(two)) / (one - two) : 0;
      // Means are good to a twentieth of the deviation, and the way goes on to twice the distance of the two.
      expect(Math.abs(first - (way(one) + slope * (x - one))), `${index}: ${x}`).toBeLessThan(deviation / 4);
    }
  });

  test('is as on the nearest line inside of the line beside, before any line is known beside it', () => {
    const firsts: { readonly y: number; readonly first: number }[] = [];
    let known = Number.NaN;
    const inside = (outer: readonly number[]) => {
      const [x = 0, y = 0] = outer;
      let isFirst = x !== known;
      known = x;
      return (z: number) => {
        if (isFirst) firsts.push({ y, first: z });
        isFirst = false;
        const log = normal(x, 0, 1) + normal(y, 20, 1) + normal(z, 10 * y, 0.1);
        return { at: z, log, aside: 0, inner: null };
      };
    };
    integrateNested({
      axes: [axis(0, 1), axis(18, 1), { ...axis(0, 1), low: -900, high: 900 }],
      along: inside,
    });
    const [, ...others] = firsts;
    expect(others.length).toBeGreaterThan(2);
    // Lines are 0.8 standard deviations from each other, or closer.
    for (const { y, first } of others) expect(Math.abs(first - 10 * y)).toBeLessThan(10 * 0.8);
  });
});

test('what is known counts for the outermost line, whatever the size of the lines inside', () => {
  const wide = ([x = 0, y = 0]: readonly number[]) => normal(x, 0, 1) + normal(y, 0, 1e6);
  const axes = [axis(0, 1), { ...axis(0, 1e6), low: -1e8, high: 1e8 }];
  const alone = integrateNested({ axes, along: along(wide) })!;
  const highest = Math.max(...alone.nodes.map(({ log }) => log));
  expect(integrateNested({ axes, along: along(wide) }, highest)).toEqual(alone);
});

/** All places of all lines. */
function placesOf({ nodes }: NestedLine): number[] {
  return nodes.flatMap(({ at, inner }) => (inner === null ? [at] : placesOf(inner)));
}
