import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { features } from '../../../src/knowledge/feature.ts';
import { beadArea } from '../../../src/physics/bead.ts';
import type { SpeedRow } from '../../../src/tables/derive/speed-table.ts';
import { runs } from '../../property-runs.ts';
import { meltLimit, type PairingFigures, policyOf, registryWith, tableWith } from './pairing-with.ts';

const policy = policyOf(registryWith({}));
const steps = policy.rounding;

/** Steps so small that rounding does not matter. */
const unrounded = { speed: 1e-7, flow: 1e-7, acceleration: 1e-7, runUp: 1e-7 };

const claimed = (value: number) => [{ value, basis: 'claimed', source: 'plumstead-wren-sheet' } as const];

interface Limits {
  readonly melt: readonly [number, number];
  readonly topSpeed: number;
  readonly acceleration: number;
  readonly contourSpeed: number;
  readonly layerTime: number;
}

const anyLimits: fc.Arbitrary<Limits> = fc.record({
  melt: fc.tuple(
    fc.double({ min: 0.5, max: 150, noNaN: true }),
    fc.double({ min: 0.5, max: 150, noNaN: true }),
  ),
  topSpeed: fc.double({ min: 5, max: 2000, noNaN: true }),
  acceleration: fc.double({ min: 100, max: 50_000, noNaN: true }),
  contourSpeed: fc.double({ min: 5, max: 500, noNaN: true }),
  layerTime: fc.double({ min: 0.5, max: 60, noNaN: true }),
});

function figuresOf({ melt, topSpeed, acceleration, contourSpeed, layerTime }: Limits): PairingFigures {
  return {
    machine: {
      topSpeed: claimed(topSpeed),
      acceleration: claimed(acceleration),
      contourSpeed: claimed(contourSpeed),
    },
    filament: {
      meltFlow: [meltLimit(melt[0], 215), meltLimit(melt[1], 230)],
      shortestLayerTime: claimed(layerTime),
    },
  };
}

/** What a speed may not exceed, by name, worked out here from the limits alone. */
function boundsOn(row: SpeedRow, limits: Limits): Record<string, number> {
  const area = beadArea(row.layerHeight, row.lineWidth);
  const bounds: Record<string, number> = {
    machine: limits.topSpeed,
    motion: Math.sqrt(row.acceleration * policy.typicalSegments[row.feature]),
  };
  if (row.feature !== 'travel') {
    bounds.melt = (Math.max(...limits.melt) * (1 - policy.flowMargin)) / area;
    bounds.cooling = policy.layerPath / limits.layerTime;
  }
  if (row.feature === 'outerContour') bounds.quality = limits.contourSpeed;
  return bounds;
}

const almost = 1 + 1e-8;

describe('whatever the limits', () => {
  it('no speed exceeds any of its bounds times the fraction of the policy, and the bound named is the least', () => {
    fc.assert(
      fc.property(anyLimits, (limits) => {
        for (const row of tableWith(figuresOf(limits)).rows) {
          const bounds = boundsOn(row, limits);
          for (const bound of Object.values(bounds)) {
            expect(row.speed).toBeLessThanOrEqual(bound * policy.fractions[row.feature] * almost);
          }
          expect(bounds[row.bound]).toBeLessThanOrEqual(Math.min(...Object.values(bounds)) * almost);
          expect(row.bounds.map(({ name }) => name).sort()).toEqual(Object.keys(bounds).sort());
          for (const { name, speed } of row.bounds) {
            expect(Math.abs(speed - bounds[name]!)).toBeLessThanOrEqual(bounds[name]! * 1e-8);
          }
          expect(row.runnerUp?.slack).toBeGreaterThanOrEqual(0);
        }
      }),
    );
  });

  it('the flow of a row is its speed through its bead, and keeps the margin below the limit', () => {
    fc.assert(
      fc.property(anyLimits, (limits) => {
        for (const row of tableWith(figuresOf(limits)).rows.filter(({ feature }) => feature !== 'travel')) {
          const flow = row.speed * beadArea(row.layerHeight, row.lineWidth);
          expect(row.flow).toBeLessThanOrEqual(flow * almost);
          expect(row.flow).toBeGreaterThan(flow - steps.flow * almost);
          expect(flow).toBeLessThanOrEqual(Math.max(...limits.melt) * (1 - policy.flowMargin) * almost);
        }
      }),
    );
  });

  it('no row exceeds the limit at the one nozzle temperature of its table', () => {
    fc.assert(
      fc.property(
        anyLimits,
        fc.constantFrom(215, 230),
        fc.constantFrom(215, 230),
        (limits, temperature, first) => {
          const figures = figuresOf(limits);
          const firstLayerNozzleTemperature = [
            { value: first, basis: 'assumed', reason: 'Bench habit' } as const,
          ];
          const table = tableWith(
            { ...figures, filament: { ...figures.filament, firstLayerNozzleTemperature } },
            { temperature },
          );
          for (const row of table.rows.filter(({ feature }) => feature !== 'travel')) {
            const set = row.feature === 'firstLayer' ? first : temperature;
            expect(row.nozzleTemperature).toBe(set);
            const limit = limits.melt[set === 215 ? 0 : 1] * (1 - policy.flowMargin);
            expect(row.speed * beadArea(row.layerHeight, row.lineWidth)).toBeLessThanOrEqual(limit * almost);
          }
        },
      ),
    );
  });

  it('rounding is to the safe side, to whole steps', () => {
    fc.assert(
      fc.property(anyLimits, (limits) => {
        for (const row of tableWith(figuresOf(limits)).rows) {
          const stated = limits.acceleration * policy.accelerationFractions[row.feature];
          expect(row.acceleration).toBeLessThanOrEqual(stated * almost);
          expect(row.runUp).toBeGreaterThanOrEqual(row.speed ** 2 / (2 * row.acceleration) / almost);
          for (const key of ['speed', 'flow', 'acceleration', 'runUp'] as const) {
            const count = row[key] / steps[key];
            if (count >= 1) expect(Math.abs(count - Math.round(count))).toBeLessThan(1e-6);
          }
        }
      }),
    );
  });

  it('a higher melt limit lowers no speed', () => {
    const more = fc.double({ min: 1, max: 3, noNaN: true });
    fc.assert(
      fc.property(anyLimits, more, more, (limits, first, second) => {
        const before = tableWith(figuresOf(limits)).rows;
        const [cool, hot] = limits.melt;
        const after = tableWith(figuresOf({ ...limits, melt: [cool * first, hot * second] })).rows;
        for (const [index, row] of after.entries()) {
          expect(row.speed).toBeGreaterThanOrEqual(before[index]!.speed);
        }
      }),
    );
  });

  it('a higher contour speed, top speed or acceleration, and a shorter layer time, lower no speed', () => {
    const more = fc.double({ min: 1, max: 3, noNaN: true });
    fc.assert(
      fc.property(anyLimits, more, (limits, factor) => {
        const before = tableWith(figuresOf(limits)).rows;
        const after = tableWith(
          figuresOf({
            ...limits,
            topSpeed: limits.topSpeed * factor,
            acceleration: limits.acceleration * factor,
            contourSpeed: limits.contourSpeed * factor,
            layerTime: limits.layerTime / factor,
          }),
        ).rows;
        for (const [index, row] of after.entries()) {
          expect(row.speed).toBeGreaterThanOrEqual(before[index]!.speed);
        }
      }),
      { numRuns: runs(40) },
    );
  });

  it('a lower speed or acceleration of the machine raises no speed', () => {
    const less = fc.double({ min: 0.2, max: 1, noNaN: true });
    fc.assert(
      fc.property(anyLimits, less, less, (limits, slower, softer) => {
        const before = tableWith(figuresOf(limits)).rows;
        const after = tableWith(
          figuresOf({
            ...limits,
            topSpeed: limits.topSpeed * slower,
            acceleration: limits.acceleration * softer,
          }),
        ).rows;
        for (const [index, row] of after.entries()) {
          expect(row.speed).toBeLessThanOrEqual(before[index]!.speed);
        }
      }),
    );
  });

  it('a finer layer does not raise the flow, nor a narrower line', () => {
    fc.assert(
      fc.property(anyLimits, (limits) => {
        const { rows } = tableWith({ ...figuresOf(limits), policy: { rounding: unrounded } });
        for (const thin of rows) {
          for (const thick of rows.filter(({ feature }) => feature === thin.feature)) {
            if (thin.layerHeight > thick.layerHeight || thin.lineWidth > thick.lineWidth) continue;
            expect(thin.flow).toBeLessThanOrEqual(thick.flow + 1e-5);
          }
        }
      }),
    );
  });

  it('every row has a speed above zero, and travel alone has no flow', () => {
    fc.assert(
      fc.property(anyLimits, (limits) => {
        for (const { feature, speed, flow } of tableWith(figuresOf(limits)).rows) {
          expect(speed).toBeGreaterThan(0);
          expect(flow === 0).toBe(feature === 'travel');
        }
      }),
    );
  });
});

describe('the sample pairing', () => {
  it('has a row for every feature, layer height and line width', () => {
    const rows = tableWith().rows.map((row) => `${row.feature} ${row.layerHeight} ${row.lineWidth}`);
    expect(rows).toHaveLength(features.length * policy.layerHeights.length * policy.lineWidths.length);
    expect(new Set(rows).size).toBe(rows.length);
  });

  it('lists features in the order of the process', () => {
    expect([...new Set(tableWith().rows.map(({ feature }) => feature))]).toEqual([...features]);
  });

  it.each<[SpeedRow['bound'], SpeedRow['feature'], PairingFigures]>([
    ['melt', 'infill', {}],
    ['machine', 'infill', { machine: { topSpeed: claimed(30) } }],
    ['motion', 'infill', { machine: { acceleration: claimed(100) } }],
    ['cooling', 'infill', { filament: { shortestLayerTime: claimed(60) } }],
    ['quality', 'outerContour', { machine: { contourSpeed: claimed(20) } }],
  ])('is bound by %s on %s where that is the least', (bound, feature, figures) => {
    const rows = tableWith(figures).rows.filter((row) => row.feature === feature);
    expect(new Set(rows.map((row) => row.bound))).toEqual(new Set([bound]));
  });

  it('has the basis of what binds', () => {
    const { rows } = tableWith();
    for (const row of rows) {
      if (row.bound === 'melt') expect(row.basis).toBe('measured');
      if (row.bound === 'quality') expect(row.basis).toBe('assumed');
    }
    expect(new Set(rows.map(({ bound }) => bound))).toContain('quality');
  });

  it('leaves out lines that are narrower than their layer is high, and says so', () => {
    const { rows, warnings } = tableWith({ policy: { layerHeights: [0.5, 1.15], lineWidths: [1.1] } });
    expect(new Set(rows.map(({ layerHeight }) => layerHeight))).toEqual(new Set([0.3]));
    expect(warnings).toEqual(['A line 0.66 mm wide cannot be 0.69 mm high; it is left out.']);
  });

  it('does not use a limit at a temperature that the hot end must not reach', () => {
    const { rows } = tableWith({ filament: { meltFlow: [meltLimit(20, 215), meltLimit(60, 320)] } });
    expect(new Set(rows.map(({ nozzleTemperature }) => nozzleTemperature))).toEqual(new Set([215]));
  });

  it('prefers what was measured to what is claimed, however much more that is', () => {
    const { rows } = tableWith({
      filament: {
        meltFlow: [
          meltLimit(20, 215),
          { ...claimed(90)[0]!, at: { machine: 'plumstead/wren', nozzle: 'hs-0.6' } },
        ],
      },
    });
    for (const { flow } of rows) expect(flow).toBeLessThanOrEqual(20 * (1 - policy.flowMargin));
  });
});
