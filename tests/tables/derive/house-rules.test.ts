import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Feature } from '../../../src/knowledge/feature.ts';
import { deriveTables } from '../../../src/tables/derive/derive-tables.ts';
import { runs } from '../../property-runs.ts';
import {
  derivedWith,
  fullFigures,
  type PairingFigures,
  pairing,
  registryWith,
  tableWith,
} from './pairing-with.ts';

const rowsOf = (feature: Feature, figures: PairingFigures) =>
  tableWith(figures).rows.filter((row) => row.feature === feature);

const capped = (speed: number, acceleration = 1e6): PairingFigures => ({
  policy: { caps: { bridge: { speed, acceleration, reason: 'Sag' } } },
});

describe('a cap of the policy', () => {
  it('holds a feature outright, and is its bound', () => {
    for (const row of rowsOf('bridge', capped(20))) {
      expect(row).toMatchObject({ speed: 20, bound: 'policy', basis: null });
    }
  });

  it('leaves a feature that is slower already', () => {
    for (const row of rowsOf('bridge', capped(5000))) expect(row.bound).not.toBe('policy');
  });

  it('is never exceeded, and never speeds anything up', () => {
    const plain = tableWith({}).rows;
    const positive = fc.integer({ min: 1, max: 900 });
    fc.assert(
      fc.property(positive, fc.integer({ min: 100, max: 30_000 }), (speed, acceleration) => {
        for (const [index, row] of tableWith(capped(speed, acceleration)).rows.entries()) {
          const before = plain[index]!;
          expect(row.speed).toBeLessThanOrEqual(before.speed);
          if (row.feature !== 'bridge') expect(row.speed).toBe(before.speed);
          else expect([row.speed <= speed, row.acceleration <= acceleration]).toEqual([true, true]);
        }
      }),
      { numRuns: runs(30) },
    );
  });

  it('is listed with its reason where some row obeys it, and not where none does', () => {
    expect(tableWith(capped(20)).caps).toEqual([
      { feature: 'bridge', speed: 20, acceleration: null, reason: 'Sag' },
    ]);
    expect(tableWith(capped(5000)).caps).toEqual([]);
  });
});

it.each([
  ['a cap of no speed', { caps: { bridge: { speed: 0, reason: 'Sag' } } }, 'caps.bridge.speed'],
  [
    'a negative acceleration',
    { caps: { bridge: { acceleration: -1, reason: 'Sag' } } },
    'caps.bridge.acceleration',
  ],
  ['a fan beyond full speed', { fan: { infill: 1.2 } }, 'fan.infill'],
  ['words for a temperature', { nozzleTemperature: 'warm' }, '"warm" is no nozzle temperature'],
])('a policy cannot be used with %s, and the refusal names it', (_, policy, words) => {
  const derived = derivedWith({ policy });
  expect(derived.ok ? '' : derived.error.message).toContain(words);
});

describe('a speed up to which the bench found that a feature holds', () => {
  const bridgeSpeed = (value: number) => [
    { value, basis: 'measured', evidence: 'wren-daisy-pla-230' } as const,
  ];

  it('holds the feature outright, without a share of it', () => {
    for (const row of rowsOf('bridge', { filament: { bridgeSpeed: bridgeSpeed(22) } })) {
      expect(row).toMatchObject({ speed: 22, bound: 'quality', basis: 'measured' });
    }
  });

  it('gives way to a lower cap of the policy, and holds below a higher one', () => {
    const filament = { bridgeSpeed: bridgeSpeed(22) };
    expect(rowsOf('bridge', { filament, ...capped(20) })[0]).toMatchObject({ speed: 20, bound: 'policy' });
    expect(rowsOf('bridge', { filament, ...capped(30) })[0]).toMatchObject({ speed: 22, bound: 'quality' });
  });

  it('leaves other features as they are', () => {
    const plain = rowsOf('infill', {});
    expect(
      rowsOf('infill', { filament: { bridgeSpeed: bridgeSpeed(22) } }).map(({ speed }) => speed),
    ).toEqual(plain.map(({ speed }) => speed));
  });
});

describe('the fan of a feature', () => {
  const fanOf = (wanted: number, window: readonly [number, number], adjustable = true) => {
    const fan = [{ value: { low: window[0], high: window[1] }, basis: 'assumed', reason: 'Habit' } as const];
    const figures: PairingFigures = {
      filament: { fan },
      policy: { fan: { infill: wanted, firstLayer: wanted } },
      machine: { partCooling: { adjustable } },
    };
    return [rowsOf('infill', figures)[0]?.fan, rowsOf('firstLayer', figures)[0]?.fan];
  };

  it('is what the policy wants, inside of the window of the filament', () => {
    expect(fanOf(0.5, [0.3, 1])).toEqual([0.5, 0.5]);
    expect(fanOf(1, [0, 0.2])).toEqual([0.2, 0.2]);
  });

  it('may be off on the first layer, whatever the least of the window', () => {
    expect(fanOf(0, [0.3, 1])).toEqual([0.3, 0]);
  });

  it('is full or none where the machine cannot set it', () => {
    expect(fanOf(0.6, [0.3, 1], false)).toEqual([1, 1]);
    expect(fanOf(0.2, [0, 1], false)).toEqual([0, 0]);
    expect(fanOf(0.6, [0, 0.7], false)).toEqual([0, 0]);
  });

  it('is not known where the filament states no window', () => {
    expect(rowsOf('infill', { policy: fullFigures.policy })[0]?.fan).toBe(null);
  });
});

describe('what is not stated', () => {
  const table = tableWith({ filament: { shortestLayerTime: [] } });
  const row = (name: string) => table.conditions.find((condition) => condition.name === name);

  it.each(['chamberTemperature', 'fan', 'retractionLength', 'retractionSpeed', 'pressureCompensation'])(
    'has a row that says so: %s',
    (name) => {
      expect(row(name)).toMatchObject({ isStated: false, window: null, ofFamily: null });
    },
  );

  it('has the published figure of the family beside it, where there is one', () => {
    expect(row('dryingTemperature')).toMatchObject({
      isStated: false,
      window: null,
      ofFamily: { family: 'PLA', low: 45, high: 50 },
    });
    expect(row('dryingTime')?.ofFamily).toEqual({ family: 'PLA', low: 4, high: 6 });
  });
});

it('takes the retraction of the house where the filament states none, and its own where it does', () => {
  const length = (figures: PairingFigures) =>
    tableWith(figures).conditions.find(({ name }) => name === 'retractionLength');
  expect(length(fullFigures)).toMatchObject({
    window: { low: 0.8, high: 0.8 },
    note: 'House rule: Bench habit',
  });
  const retractionLength = [{ value: 1.4, basis: 'claimed', source: 'oakhollow-daisy-pla-sheet' } as const];
  const own = { ...fullFigures, filament: { ...fullFigures.filament, retractionLength } };
  expect(length(own)).toMatchObject({ window: { low: 1.4, high: 1.4 }, note: '' });
});

describe('beads of one’s own', () => {
  const beads = (asked: Parameters<typeof tableWith>[1]) => [
    ...new Set(tableWith({}, asked).rows.map(({ layerHeight, lineWidth }) => `${layerHeight}x${lineWidth}`)),
  ];

  it('stand in place of those of the policy: in mm, or as a share of the nozzle', () => {
    const asked = {
      layerHeights: [{ millimetres: 0.25 }],
      lineWidths: [{ ofNozzle: 1.2 }, { millimetres: 0.6 }],
    };
    expect(beads(asked)).toEqual(['0.25x0.6', '0.25x0.72']);
  });

  it('leave the other list to the policy, and count once', () => {
    const layerHeights = [{ millimetres: 0.3 }, { ofNozzle: 0.5 }];
    expect(beads({ layerHeights })).toEqual(['0.3x0.66', '0.3x0.72']);
  });

  it('that cannot be laid are left out, and a warning says so', () => {
    const { rows, warnings } = tableWith({}, { layerHeights: [{ millimetres: 0.9 }, { millimetres: 0.2 }] });
    expect(new Set(rows.map(({ layerHeight }) => layerHeight))).toEqual(new Set([0.2]));
    expect(warnings).toContain('A line 0.66 mm wide cannot be 0.9 mm high; it is left out.');
  });

  it('none of which can be laid give no table', () => {
    const registry = registryWith({});
    const asked = { ...pairing, layerHeights: [{ millimetres: 5 }] };
    expect(deriveTables(registry, asked, { judgesEvidence: false })).toMatchObject({
      ok: false,
      error: { code: 'noBead' },
    });
  });
});
