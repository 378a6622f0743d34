import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ConditionName, ConditionRow } from '../../../src/tables/derive/conditions/condition-row.ts';
import { formatConditionsAsCsv } from '../../../src/tables/write/conditions-as-csv.ts';
import { formatTableAsJson } from '../../../src/tables/write/table-as-json.ts';
import { formatTableAsMarkdown } from '../../../src/tables/write/table-as-markdown.ts';
import { runs } from '../../property-runs.ts';
import { meltLimit, type PairingFigures, pairing, registryWith, tableWith } from './pairing-with.ts';

const assumed = <Value>(value: Value) => [{ value, basis: 'assumed', reason: 'Bench habit' } as const];

function conditions(name: ConditionName, figures: PairingFigures = {}): ConditionRow[] {
  return tableWith(figures).conditions.filter((row) => row.name === name);
}

describe('the nozzle temperature', () => {
  it('is the tested one alone where one temperature was tested, and says so', () => {
    const [row, ...others] = conditions('nozzleTemperature', {
      filament: { meltFlow: [meltLimit(20, 215)] },
    });
    expect(others).toEqual([]);
    expect(row).toMatchObject({
      flow: 18,
      window: { low: 215, high: 215 },
      note: 'Only 215 Cel was tested.',
    });
  });

  it('is one for the whole table, with the flow that it feeds and whose choice it is', () => {
    expect(conditions('nozzleTemperature')).toMatchObject([
      {
        flow: 23.4,
        window: { low: 230, high: 230 },
        note: '2 temperatures from 215 Cel to 230 Cel were tested; of those tested the one with the largest flow, by policy "house".',
      },
    ]);
  });
});

// The filament of the sample pairing is to be printed at 200..235 Cel.
describe('the nozzle temperature of the first layer', () => {
  const firstLayer = (stated: number, limit: number, hotEndMargin = 0) => {
    const [hotEnd] = registryWith({}).machine.get(pairing.machine)!.data.hotEnds;
    return conditions('firstLayerNozzleTemperature', {
      filament: {
        firstLayerNozzleTemperature: assumed(stated),
        meltFlow: [200, 220, 225].map((temperature) => meltLimit(20, temperature)),
      },
      machine: { hotEnds: [{ ...hotEnd!, temperatureLimit: assumed(limit) }] },
      policy: { hotEndMargin },
    })[0];
  };

  it('is the stated one', () => {
    expect(firstLayer(220, 260)).toMatchObject({ window: { low: 220, high: 220 }, note: '' });
  });

  it('stays below the limit of the hot end by the margin of the policy', () => {
    const row = firstLayer(230, 235, 10);
    expect(row).toMatchObject({
      window: { low: 225, high: 225 },
      note: 'Cut at the 225 Cel that the hot end may be set to; 230 Cel is asked for.',
    });
    expect(row?.sourcedValues.map(({ what }) => what)).toContain('limit of the hot end');
  });

  it('is the nearest tested one where no limit is known at the stated one', () => {
    expect(firstLayer(210, 260)).toMatchObject({
      window: { low: 200, high: 200 },
      note: '210 Cel is asked for, and no limit is known there.',
    });
  });

  it('is that of the table where none is stated', () => {
    expect(conditions('firstLayerNozzleTemperature')).toMatchObject([
      {
        window: { low: 230, high: 230 },
        isStated: false,
        note: 'Not stated: printed at the temperature of the table.',
      },
    ]);
  });
});

describe('windows of temperature', () => {
  it('are rounded inward', () => {
    const [bed] = conditions('bedTemperature', {
      filament: { bedTemperature: assumed({ low: 51.2, high: 59.7 }) },
    });
    expect(bed?.window).toEqual({ low: 52, high: 59 });
  });

  it('are cut at what the machine reaches', () => {
    const [bed] = conditions('bedTemperature', {
      filament: { bedTemperature: assumed({ low: 90, high: 110 }) },
    });
    expect(bed).toMatchObject({
      window: { low: 90, high: 100 },
      note: 'Cut at the 100 Cel that the bed reaches.',
    });
  });

  it('are none where the machine does not reach them', () => {
    const [bed] = conditions('bedTemperature', {
      filament: { bedTemperature: assumed({ low: 120, high: 130 }) },
    });
    expect(bed).toMatchObject({
      window: null,
      note: 'The bed reaches 100 Cel, and at least 120 Cel is asked for.',
    });
  });
});

describe('the offset of a part from what it is set to', () => {
  const measured = (value: number, low: number, high: number) => [
    { value, interval: { low, high }, basis: 'assumed', reason: 'Bench habit' } as const,
  ];

  it('moves the window of a bed that is colder than it says', () => {
    const [bed] = conditions('bedTemperature', {
      filament: { bedTemperature: assumed({ low: 50, high: 60 }) },
      machine: { bedTemperatureOffset: measured(-3.4, -4, -2.8) },
    });
    expect(bed).toMatchObject({
      window: { low: 54, high: 63 },
      note: 'To set, for 50..60 Cel: the bed is 3.4 K colder than it says.',
    });
    expect(bed?.sourcedValues.map(({ what }) => what)).toContain('temperature offset of the bed');
  });

  it('is taken off before the window is cut at what can be set', () => {
    const [bed] = conditions('bedTemperature', {
      filament: { bedTemperature: assumed({ low: 90, high: 100 }) },
      machine: { bedTemperatureOffset: measured(-5, -6, -4) },
    });
    expect(bed).toMatchObject({
      window: { low: 95, high: 100 },
      note: 'To set, for 90..100 Cel: the bed is 5 K colder than it says. Cut at the 100 Cel that the bed reaches.',
    });
  });

  it('leaves the nozzle as it was set on the bench, and says how hot that is', () => {
    const [nozzle] = conditions('nozzleTemperature', {
      machine: { nozzleTemperatureOffset: measured(-4, -5, -3) },
    });
    expect(nozzle).toMatchObject({ window: { low: 230, high: 230 } });
    expect(nozzle?.note).toMatch(
      /To set as it was on the bench; the nozzle is 4 K colder than it says, at about 226 Cel\.$/,
    );
  });

  // The filament of the sample pairing softens at 58 Cel.
  it.each([
    [-4, -5, -3, { low: 54, high: 54 }],
    [3, 2, 4, { low: 47, high: 47 }],
  ])('moves the setting of a dryer that is %f K off', (value, low, high, window) => {
    const [dryer] = conditions('dryingTemperature', {
      filament: { dryingTemperature: assumed(50) },
      machine: {
        dryer: { setting: 'adjustable', range: { low: 40, high: 80 } },
        dryerTemperatureOffset: measured(value, low, high),
      },
      policy: { dryingMargin: 0 },
    });
    expect(dryer?.window).toEqual(window);
  });

  it('keeps spools out of a dryer that may be hotter than they bear, though it says less', () => {
    const [dryer] = conditions('dryingTemperature', {
      filament: { dryingTemperature: assumed(50) },
      machine: {
        dryer: { setting: 'fixed', temperature: 52 },
        dryerTemperatureOffset: measured(5, 3, 7),
      },
      policy: { dryingMargin: 0 },
    });
    expect(dryer?.window).toBeNull();
    expect(dryer?.note).toContain('It is 5 K warmer than it says.');
  });
});

// The filament of the sample pairing softens at 58 Cel.
describe('drying', () => {
  const drying = (dryer: NonNullable<PairingFigures['machine']>['dryer'], dryingMargin = 0) =>
    conditions('dryingTemperature', {
      filament: { dryingTemperature: assumed(50) },
      machine: dryer === undefined ? {} : { dryer },
      policy: { dryingMargin },
    })[0];

  it('takes the setting that is asked for, where the dryer can be set', () => {
    expect(drying({ setting: 'adjustable', range: { low: 40, high: 80 } })?.window).toEqual({
      low: 50,
      high: 50,
    });
  });

  it('stays below softening by the margin of the policy', () => {
    expect(drying({ setting: 'adjustable', range: { low: 40, high: 80 } }, 12)).toMatchObject({
      window: { low: 46, high: 46 },
      note: 'Below the 50 Cel asked for.',
    });
  });

  it.each([
    [{ setting: 'fixed', temperature: 65 } as const, 'is fixed at 65 Cel'],
    [{ setting: 'adjustable', range: { low: 60, high: 80 } } as const, 'runs at 60 Cel at least'],
  ])('is not to be done in a dryer that is too hot: %j', (dryer, what) => {
    expect(drying(dryer)).toMatchObject({
      window: null,
      note: `Do not use the dryer of the machine: it ${what}. The filament is soft above 58 Cel, where the profile says that it softens, and the spool would fuse.`,
    });
  });

  it('takes a cooler fixed dryer as it is, and says so', () => {
    expect(drying({ setting: 'fixed', temperature: 45 })).toMatchObject({
      window: { low: 45, high: 45 },
      note: 'The dryer is fixed there, below the 50 Cel asked for.',
    });
  });

  it.each([
    [{ setting: 'fixed', temperature: 55 } as const, 'The dryer is fixed there, above the 50 Cel asked for.'],
    [
      { setting: 'adjustable', range: { low: 55, high: 80 } } as const,
      'Above the 50 Cel asked for: the dryer runs no cooler.',
    ],
  ])('says so where the dryer runs no cooler than above what is asked for: %j', (dryer, note) => {
    expect(drying(dryer)).toMatchObject({ window: { low: 55, high: 55 }, note });
  });

  it('never sets a dryer above softening less the margin', () => {
    const temperature = fc.integer({ min: 30, max: 90 });
    fc.assert(
      fc.property(temperature, temperature, fc.integer({ min: 0, max: 20 }), (a, b, margin) => {
        const range = { low: Math.min(a, b), high: Math.max(a, b) };
        const row = drying({ setting: 'adjustable', range }, margin);
        if (row?.window !== null) expect(row?.window.high).toBeLessThanOrEqual(58 - margin);
      }),
      { numRuns: runs(40) },
    );
  });

  it('names all that its temperature rests on, the families of the filament among it', () => {
    const [row] = conditions('dryingTemperature', {
      filament: { dryingTemperature: assumed(50), softening: [] },
      machine: { dryer: { setting: 'adjustable', range: { low: 40, high: 80 } } },
      policy: { dryingMargin: 5 },
    });
    expect(row?.sourcedValues.map(({ what }) => what)).toEqual([
      'drying temperature',
      'glass transition',
      'settings of the dryer',
      'margin below softening',
    ]);
    const { inputs } = tableWith({ filament: { dryingTemperature: assumed(50), softening: [] } });
    expect(inputs.map(({ kind, id }) => `${kind} ${id}`)).toContain('polymer PLA');
  });

  it('takes as long as is asked for, rounded up', () => {
    const [row] = conditions('dryingTime', {
      filament: { dryingTime: assumed(3.5 * 3600 + 0.2) },
      policy: { rounding: { speed: 1, flow: 0.1, acceleration: 50, runUp: 0.1, time: 1800 } },
    });
    expect(row).toMatchObject({ window: { low: 4, high: 4 }, unit: 'h' });
  });
});

it('rounds the shortest layer time up', () => {
  const [row] = conditions('shortestLayerTime', { filament: { shortestLayerTime: assumed(4.2) } });
  expect(row?.window).toEqual({ low: 5, high: 5 });
});

describe('the CSV file of the conditions', () => {
  it('reads back, one condition a line, empty where there is nothing', () => {
    const [header, first, ...others] = parse(formatConditionsAsCsv(tableWith())) as string[][];
    expect(header).toEqual([
      'condition',
      'flow [mm3/s]',
      'low',
      'high',
      'unit',
      'familyLow',
      'familyHigh',
      'basis',
      'flags',
      'restsOn',
      'note',
    ]);
    expect(first?.slice(0, 10)).toEqual(
      'nozzleTemperature,23.4,230,230,Cel,,,measured,simulated,trial wren-daisy-pla-230'.split(','),
    );
    expect(others).toHaveLength(tableWith().conditions.length - 1);
  });

  it('defuses a reason that a spreadsheet would run', () => {
    const reason = '=HYPERLINK("x")\n2';
    const table = tableWith({
      filament: { shortestLayerTime: [{ value: 5, basis: 'assumed', reason }] },
    });
    const line = (parse(formatConditionsAsCsv(table)) as string[][]).find(
      ([name]) => name === 'shortestLayerTime',
    );
    expect(line?.[9]).toBe('\'=HYPERLINK("x") 2');
  });
});

describe('flags of a condition', () => {
  const flagsOf = (name: ConditionName, figures: PairingFigures) =>
    conditions(name, figures).map(({ flags }) => flags);

  it('are none where nothing is to be known', () => {
    expect(flagsOf('bedTemperature', {})).toEqual([[]]);
  });

  it('say that the trial of a limit is stale, or does not support it', () => {
    expect(flagsOf('nozzleTemperature', { machine: { firmware: '9.0.0' } })).toEqual([
      ['stale', 'simulated'],
    ]);
    expect(flagsOf('nozzleTemperature', { filament: { meltFlow: [meltLimit(40, 215)] } }).flat()).toContain(
      'unsupported',
    );
  });

  it('say what the house rules think of the basis', () => {
    const asked = { basis: 'measured', weaker: 'flag' } as const;
    const capped = { basis: 'measured', weaker: 'cap', share: 0.5 } as const;
    const policy = (shortestLayerTime: typeof asked | typeof capped) => ({
      policy: { minimumBasis: { shortestLayerTime } },
    });
    expect(flagsOf('shortestLayerTime', policy(asked))).toEqual([['weakBasis']]);
    expect(flagsOf('shortestLayerTime', policy(capped))).toEqual([['capped']]);
  });

  it('stand in CSV, JSON and Markdown', () => {
    const table = tableWith({ machine: { firmware: '9.0.0' } });
    const [, line] = parse(formatConditionsAsCsv(table)) as string[][];
    expect(line?.[8]).toBe('stale simulated');
    expect(JSON.parse(formatTableAsJson(table)).conditions[0].flags).toEqual(['stale', 'simulated']);
    expect(formatTableAsMarkdown(table)).toMatch(/^\| nozzleTemperature .*\| stale simulated /m);
  });
});
