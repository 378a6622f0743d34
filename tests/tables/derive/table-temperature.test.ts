import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitLimitLine } from '../../../src/bench/limit-line/limit-line.ts';
import { limitAt } from '../../../src/bench/limit-line/limit-line-answers.ts';
import { beadArea } from '../../../src/physics/bead.ts';
import { deriveFamily } from '../../../src/tables/derive/table-family.ts';
import { runs } from '../../property-runs.ts';
import { testDay } from '../../run-command.ts';
import {
  derivedWith,
  meltLimit,
  type PairingFigures,
  pairing,
  registryWith,
  sampleReduction,
  tableWith,
} from './pairing-with.ts';

const measured = (value: number, temperature: number, half = 0.5) => ({
  ...meltLimit(value, temperature),
  interval: { low: value - half, high: value + half },
});

const three: PairingFigures = {
  filament: { meltFlow: [measured(20, 205), measured(24, 215), measured(23, 230)] },
};

const policyOf = (nozzleTemperature: string): PairingFigures => ({ ...three, policy: { nozzleTemperature } });

describe('the one nozzle temperature of a table', () => {
  it.each([
    ['largestFlow', 215, 24],
    ['lowestTested', 205, 20],
    ['230 Cel', 230, 23],
    ['503.15 K', 230, 23],
  ])('is chosen by the policy: %s', (rule, temperature, limit) => {
    const { temperatures, largestFlow } = tableWith(policyOf(rule));
    expect([temperatures.print, largestFlow.limit]).toEqual([temperature, limit]);
  });

  it('is that with the largest flow where the policy says nothing', () => {
    expect(tableWith(three).temperatures.print).toBe(215);
  });

  it('is the coolest of equals', () => {
    const equal = { filament: { meltFlow: [measured(24, 230), measured(24, 215)] } };
    expect(tableWith(equal).temperatures.print).toBe(215);
  });

  it('is the one asked for, whatever the policy', () => {
    const { temperatures, largestFlow } = tableWith(policyOf('largestFlow'), { temperature: 230 });
    expect([temperatures.print, largestFlow.limit, largestFlow.chosenBy]).toEqual([230, 23, 'as asked for']);
  });

  it('stands at every printed row but those of the first layer', () => {
    const firstLayerNozzleTemperature = [{ value: 205, basis: 'assumed', reason: 'Habit' } as const];
    const { rows } = tableWith({ filament: { ...three.filament, firstLayerNozzleTemperature } });
    for (const { feature, nozzleTemperature } of rows) {
      expect([feature, nozzleTemperature]).toEqual([feature, feature === 'firstLayer' ? 205 : 215]);
    }
  });
});

describe('between tested temperatures', () => {
  const points = [
    { temperature: 205, limit: 20, low: 19.5, high: 20.5 },
    { temperature: 215, limit: 24, low: 23.5, high: 24.5 },
    { temperature: 230, limit: 23, low: 22.5, high: 23.5 },
  ];

  it('the lower end of the band of the line counts', () => {
    const line = fitLimitLine(points);
    const answer = line.ok ? limitAt(line.value, 220) : null;
    const { largestFlow } = tableWith(three, { temperature: 220 });
    expect(answer?.ok && answer.value.low).toBeCloseTo(largestFlow.limit, 12);
    expect(largestFlow).toMatchObject({ isInterpolated: true, basis: 'measured' });
    expect(largestFlow.limit).toBeLessThan(23);
  });

  it('no row exceeds that, whatever the limits', () => {
    const flow = fc.double({ min: 5, max: 60, noNaN: true });
    fc.assert(
      fc.property(flow, flow, fc.double({ min: 205, max: 225, noNaN: true }), (cool, hot, temperature) => {
        const table = derivedWith(
          { filament: { meltFlow: [measured(cool, 205), measured(hot, 225)] } },
          { temperature },
        );
        if (!table.ok) return;
        const { largestFlow, rows } = table.value;
        expect(largestFlow.limit).toBeLessThanOrEqual(Math.max(cool, hot));
        for (const { feature, speed, layerHeight, lineWidth } of rows) {
          if (feature === 'travel') continue;
          expect(speed * beadArea(layerHeight, lineWidth)).toBeLessThanOrEqual(
            largestFlow.limit * 0.9 * (1 + 1e-9),
          );
        }
      }),
      { numRuns: runs(40) },
    );
  });

  it('limits without intervals give none, and the refusal names those that are known', () => {
    const bare = { filament: { meltFlow: [meltLimit(22, 215), meltLimit(26, 230)] } };
    expect(derivedWith(bare, { temperature: 220 })).toMatchObject({
      ok: false,
      error: {
        code: 'noLine',
        message:
          'No limit is known at 220 Cel, and none can be drawn between those that are: 215 Cel, 230 Cel',
        help: 'Take one of these, or run a ladder at 220 Cel.',
      },
    });
  });
});

it.each([204.9, 230.1, 400])('outside of what was tested there is no table: %s Cel', (temperature) => {
  expect(derivedWith(three, { temperature })).toMatchObject({ ok: false, error: { code: 'outsideTested' } });
});

it('a policy that fixes a temperature outside of what was tested gives no table', () => {
  expect(derivedWith(policyOf('190 Cel'))).toMatchObject({ ok: false, error: { code: 'outsideTested' } });
});

describe('the family of tables', () => {
  const family = deriveFamily(registryWith(three), pairing, { today: testDay, reduce: sampleReduction });

  it('has a table for each tested temperature, and says which the policy would take and why', () => {
    expect(family.ok && family.value.tables.map(({ temperatures }) => temperatures.print)).toEqual([
      205, 215, 230,
    ]);
    expect(family).toMatchObject({
      ok: true,
      value: {
        chosen: 215,
        chosenBy: 'of those tested the one with the largest flow, by policy "house"',
      },
    });
  });

  it('has the same table as one that is asked for by its temperature', () => {
    expect(family.ok && family.value.tables[2]).toEqual(tableWith(three, { temperature: 230 }));
  });
});
