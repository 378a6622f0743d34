import { describe, expect, test } from 'vitest';
import { march } from '../../src/statistics/line-march.ts';

const endless = {
  low: Number.NEGATIVE_INFINITY,
  high: Number.POSITIVE_INFINITY,
  spacing: 1,
  cliff: 2,
};

/** The places that a walk over a density, given by its logarithm, takes. */
function walked(
  log: (x: number) => number,
  { axis = {}, center = 0, distance = 1, floor = Number.NEGATIVE_INFINITY } = {},
) {
  const nodeAt = (at: number) => ({ at, log: log(at), aside: 0 });
  const { nodes, lost } = march(nodeAt, { ...endless, ...axis }, { center, distance }, floor);
  return { places: nodes.map(({ at }) => at), lost };
}

describe('a walk to both sides', () => {
  test.each([
    ['the middle', 5],
    ['beyond the upper end', 20],
    ['below the lower end', -20],
  ])('takes an even density from end to end, begun at %s', (_, center) => {
    const { places, lost } = walked(() => 0, { axis: { low: 0, high: 10 }, center });
    expect(places).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
    expect(lost).toBe(false);
  });

  test('ends on the ends themselves where steps do not fit', () => {
    expect(walked(() => 0, { axis: { low: -1.5, high: 2.25 } }).places).toEqual([-1.5, -1, 0, 1, 2, 2.25]);
  });

  test('ends on an endless even density too', () => {
    const { places, lost } = walked(() => 0);
    expect(lost).toBe(false);
    expect(places.length).toBeLessThan(200);
    expect(places[0]).toBe(-places.at(-1)!);
  });

  test('goes on until the density is below the best by e^5', () => {
    const { places } = walked((x) => -Math.abs(x));
    expect(places).toEqual([-6, -5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5, 6]);
  });

  test('goes up a second summit from the valley between two', () => {
    const { places, lost } = walked((x) => Math.max(-((x - 5) ** 2), -((x + 5) ** 2)), {
      center: -0.2,
      distance: 1.5,
    });
    expect(lost).toBe(false);
    for (const summit of [-5, 5])
      expect(Math.min(...places.map((at) => Math.abs(at - summit)))).toBeLessThan(1.5);
  });

  test('leaves out a node that would be negligible by the parabola through the last three', () => {
    expect(walked((x) => -(x ** 2) / 2).places).toEqual([-3, -2, -1, 0, 1, 2, 3]);
  });

  test('goes on to a floor only', () => {
    expect(walked((x) => -Math.abs(x), { floor: -2 }).places).toEqual([-3, -2, -1, 0, 1, 2, 3]);
  });

  test('takes a node to either side of a start below the floor', () => {
    expect(walked((x) => -Math.abs(x), { floor: 10 }).places).toEqual([-1, 0, 1]);
  });

  test('measures the way down against the best node of the way up', () => {
    expect(walked((x) => -3 * Math.abs(x - 2)).places).toEqual([-1, 0, 1, 2, 3]);
  });

  test('goes on behind a node where nothing is possible', () => {
    const { places } = walked((x) => (x < 0.5 ? Number.NEGATIVE_INFINITY : -Math.abs(x - 1)));
    expect(places).toEqual([-1, 0, 1, 2, 3, 4, 5, 6, 7]);
  });

  test('takes longer steps only where the density falls gently', () => {
    const tail = (x: number) => -0.1 * Math.abs(x);
    const { places } = walked(tail);
    const up = places.filter((at) => at >= 0);
    for (let index = 2; index < up.length; index++) {
      const [first = 0, second = 0, third = 0] = up.slice(index - 2, index + 1);
      const gently = tail(first) - tail(second) < 0.5;
      expect((third - second) / (second - first)).toBeCloseTo(gently ? 1.5 : 1, 9);
    }
    expect(tail(up.at(-1)!)).toBeLessThan(-4);
    expect(places).toEqual([
      ...up
        .slice(1)
        .map((at) => -at)
        .reverse(),
      ...up,
    ]);
  });
});

describe('a walk that keeps climbing', () => {
  test.each([
    ['upwards', 1],
    ['downwards', -1],
  ])('%s is lost, and its nodes end with the best one', (_, slope) => {
    const { places, lost } = walked((x) => slope * x);
    expect(lost).toBe(true);
    expect(Math.max(...places.map((at) => slope * at))).toBeGreaterThanOrEqual(4);
    expect(places.length).toBeLessThan(20);
  });

  test('to the end of the axis is not', () => {
    const { places, lost } = walked((x) => x, { axis: { high: 3 } });
    expect(lost).toBe(false);
    expect(places).toEqual([-3, -2, -1, 0, 1, 2, 3]);
  });
});
