import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PrintPath, type PrintPlan, pathTime, printTime } from '../../src/physics/print-time.ts';

const path: PrintPath = {
  length: 30_000,
  meanSegment: 20,
  speed: 200,
  acceleration: 5000,
  corner: { deflection: 90, tolerance: 0.05 },
  pause: 0,
  place: 'allLayers',
};
const plan: PrintPlan<string> = {
  layers: 100,
  paths: new Map([['infill', path]]),
  layerChange: 0.5,
  shortestLayerTime: 0,
};
const withPath = (changes: Partial<PrintPath>): PrintPlan<string> => ({
  ...plan,
  shortestLayerTime: 2,
  paths: new Map([['infill', { ...path, ...changes }]]),
});
const total = (changes: Partial<PrintPath>) => printTime(withPath(changes)).total;

const anyPath = fc.record({
  length: fc.double({ min: 1, max: 1e6, noNaN: true }),
  meanSegment: fc.double({ min: 0.1, max: 200, noNaN: true }),
  speed: fc.double({ min: 1, max: 1500, noNaN: true }),
  acceleration: fc.double({ min: 100, max: 50_000, noNaN: true }),
  pause: fc.double({ min: 0, max: 1, noNaN: true }),
  corner: fc.constantFrom(null, { deflection: 90, tolerance: 0.05 }, { deflection: 30, tolerance: 0.2 }),
});
const share = fc.double({ min: 0.01, max: 1, noNaN: true });
const slack = 1 + 1e-9;

describe('printTime', () => {
  it('is never longer with more acceleration', () => {
    fc.assert(
      fc.property(anyPath, share, (given, part) => {
        const slower = { ...given, acceleration: part * given.acceleration };
        expect(total(given)).toBeLessThanOrEqual(total(slower) * slack);
      }),
    );
  });

  it('is never shorter for a longer path', () => {
    fc.assert(
      fc.property(anyPath, share, (given, part) => {
        expect(total({ ...given, length: part * given.length })).toBeLessThanOrEqual(total(given) * slack);
      }),
    );
  });

  it('is never shorter when stretches are split', () => {
    fc.assert(
      fc.property(anyPath, share, (given, part) => {
        const split = { ...given, meanSegment: part * given.meanSegment };
        expect(total(split) * slack).toBeGreaterThanOrEqual(total(given));
      }),
    );
  });

  it('is at least the path at its commanded speed', () => {
    fc.assert(
      fc.property(anyPath, (given) => {
        expect(total(given) * slack).toBeGreaterThanOrEqual(given.length / given.speed);
      }),
    );
  });

  it('counts a change of layer between two layers', () => {
    expect(printTime(plan).layerChanges).toBeCloseTo(99 * 0.5, 9);
  });

  it('waits in every layer that is done too early', () => {
    const quick = printTime(plan).total - 99 * 0.5;
    const waiting = printTime({ ...plan, shortestLayerTime: 10 });
    expect(waiting.coolingWait).toBeCloseTo(100 * 10 - quick, 6);
    expect(waiting.total).toBeCloseTo(100 * 10 + 99 * 0.5, 6);
  });

  it('lets no other layer make up for a first layer that is done too early', () => {
    const first = { ...path, length: 200, place: 'firstLayer' as const };
    const above = { ...path, length: 300_000, place: 'layersAbove' as const };
    const paths = new Map<string, PrintPath>([
      ['firstLayer', first],
      ['infill', above],
    ]);
    const firstTime = pathTime(first);
    const { coolingWait } = printTime({ ...plan, paths, shortestLayerTime: 4 });
    expect(coolingWait).toBeCloseTo(4 - firstTime.cruise - firstTime.ramps, 9);
  });

  it('has one layer where a job says so, whatever it calls its paths', () => {
    const above = { ...path, length: 200, place: 'layersAbove' as const };
    const single = printTime({
      ...plan,
      layers: 1,
      paths: new Map([['infill', above]]),
      shortestLayerTime: 60,
    });
    expect(single.total).toBeCloseTo(60, 9);
  });
});

describe('pathTime', () => {
  it('reaches a peak below the commanded speed on short stretches', () => {
    const { peak, cruise } = pathTime({ ...path, corner: null, meanSegment: 2 });
    expect(peak).toBeCloseTo(Math.sqrt(5000 * 2), 9);
    expect(cruise).toBe(0);
  });

  it('takes a path shorter than its mean stretch as one stretch', () => {
    expect(pathTime({ ...path, length: 10, pause: 0.3 }).pauses).toBeCloseTo(0.3, 12);
  });

  it('of no path is nothing', () => {
    expect(pathTime({ ...path, length: 0 })).toEqual({ cruise: 0, ramps: 0, pauses: 0, peak: 0 });
  });
});
