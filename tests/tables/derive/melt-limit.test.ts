import { describe, expect, it } from 'vitest';
import { derivedWith, meltLimit, pairing, tableWith } from './pairing-with.ts';

/** The sample trials state no accepted deficit, so that they were reduced at the usual 5 %. */
describe('the deficit that a trial accepted', () => {
  it('may be smaller than that of the policy: the limit is on the safe side', () => {
    const table = tableWith({ policy: { acceptedDeficit: 0.1 } });
    expect(table.meltLimits.map(({ acceptedDeficit }) => acceptedDeficit)).toEqual([0.05, 0.05]);
    expect(table.warnings).toEqual([]);
  });

  it('must not be larger: the limit is left out', () => {
    expect(derivedWith({ policy: { acceptedDeficit: 0.03 } })).toEqual({
      ok: false,
      error: {
        code: 'noUsableMeltFlow',
        message:
          'No melt flow can be used for oakhollow/daisy-pla on plumstead/wren with nozzle hs-0.6. The limit of 22 mm3/s at 215 Cel is left out: its trial wren-daisy-pla-215 accepted a deficit of 5 %, more than the 3 % of the policy; reduce the ladder again with that. The limit of 26 mm3/s at 230 Cel is left out: its trial wren-daisy-pla-230 accepted a deficit of 5 %, more than the 3 % of the policy; reduce the ladder again with that.',
        help: 'Run a flow ladder, reduce it and adopt its limit.',
      },
    });
  });
});

describe('a limit is left out, and a warning says so', () => {
  it('at a temperature that the hot end must not reach', () => {
    const { meltLimits, warnings } = tableWith({
      filament: { meltFlow: [meltLimit(20, 215), meltLimit(60, 230)] },
      policy: { hotEndMargin: 70 },
    });
    expect(meltLimits.map(({ nozzleTemperature }) => nozzleTemperature)).toEqual([215]);
    expect(warnings).toContain(
      'The limit of 60 mm3/s at 230 Cel is left out: the hot end may be set to 220 Cel at most.',
    );
  });

  it('at a temperature outside of the window of the filament', () => {
    const { meltLimits, warnings } = tableWith({
      filament: { meltFlow: [meltLimit(20, 215), meltLimit(60, 250)] },
    });
    expect(meltLimits.map(({ nozzleTemperature }) => nozzleTemperature)).toEqual([215]);
    expect(warnings).toContain(
      'The limit of 60 mm3/s at 250 Cel is left out: oakhollow/daisy-pla is to be printed at 200 Cel to 235 Cel.',
    );
  });
});

describe('a limit that `check` refuses', () => {
  const unsupported = tableWith({ filament: { meltFlow: [meltLimit(60, 215)] } });

  it('is named in a warning with what its readings give', () => {
    expect(unsupported.warnings).toEqual([
      expect.stringMatching(
        /^A limit of this table is not supported by its evidence, and `check` refuses it\. The limit 60 mm3\/s is above what the trial "wren-daisy-pla-215" supports: its readings give 23\.9 mm3\/s/,
      ),
    ]);
  });

  it('flags every row that it could hold', () => {
    for (const { feature, flags } of unsupported.rows) {
      expect([feature, flags.includes('unsupported')]).toEqual([feature, feature !== 'travel']);
    }
  });

  it('is one that has no trial in the registry', () => {
    const { warnings } = tableWith({
      filament: { meltFlow: [{ ...meltLimit(20, 215), evidence: 'wren-daisy-pla-299' }] },
    });
    expect(warnings).toEqual([
      'A limit of this table is not supported by its evidence, and `check` refuses it. oakhollow/daisy-pla calls a value measured by the trial "wren-daisy-pla-299", which is not in the registry.',
    ]);
  });

  it('is one whose trial was run under other conditions', () => {
    const { rows, warnings } = tableWith({ filament: { meltFlow: [meltLimit(20, 220)] } });
    expect(warnings.join()).toContain('the trial "wren-daisy-pla-215" was run with 215 Cel');
    expect(rows[0]?.flags).toContain('unsupported');
  });
});

it('warns where the controller software has changed since the trial', () => {
  const { rows, warnings } = tableWith({ machine: { firmware: '2.0.0' } });
  expect(warnings.join()).toContain(
    'A limit of this table rests on old evidence. The trial was run with firmware 1.3.0',
  );
  expect(rows[0]?.flags).toEqual(['stale']);
});

it('has no warning where every limit stands, and no flag but that its trials are simulated', () => {
  const { rows, warnings } = tableWith();
  expect(warnings).toEqual([]);
  expect(new Set(rows.flatMap(({ flags }) => flags))).toEqual(new Set(['simulated']));
});

describe('several limits of the same conditions', () => {
  const other = (value: number, batch: string, evidence = 'wren-daisy-pla-230') => ({
    ...meltLimit(value, 215),
    evidence,
    at: { ...meltLimit(value, 215).at, batch },
  });

  it('count as the lowest, whatever their order and date, and the table says so', () => {
    for (const meltFlow of [
      [other(20, 'A'), other(18, 'B')],
      [other(18, 'B'), { ...other(20, 'A'), date: '2026-09-01' }],
    ]) {
      const { largestFlow, warnings } = tableWith({ filament: { meltFlow } });
      expect(largestFlow.limit).toBe(18);
      expect(warnings).toContain(
        '2 limits were measured at 215 Cel: the lowest counts, 18 mm3/s of trial wren-daisy-pla-230.',
      );
    }
  });

  it('are chosen by their batch where that is known', () => {
    const figures = { filament: { meltFlow: [other(20, 'A'), other(18, 'B'), meltLimit(15, 230)] } };
    const table = (batch: string) => tableWith(figures, { batch, temperature: 215 });
    expect(table('A').largestFlow.limit).toBe(20);
    expect(table('B').largestFlow.limit).toBe(18);
  });

  it('are not measured for a batch that none was measured for', () => {
    const figures = { filament: { meltFlow: [other(20, 'A'), other(18, 'B')] } };
    expect(tableWith(figures, { batch: 'C' }).largestFlow.basis).toBe('claimed');
  });

  it('are not weighed against weaker ones: a lower claim does not count beside a measurement', () => {
    const claim = {
      value: 5,
      basis: 'claimed',
      source: 'plumstead-wren-sheet',
      at: { machine: pairing.machine, nozzle: 'hs-0.6', nozzleTemperature: 215 },
    } as const;
    expect(tableWith({ filament: { meltFlow: [other(20, 'A'), claim] } }).largestFlow.limit).toBe(20);
  });
});

it('a machine that was timed twice goes by the lower speed, and a layer time by the longer', () => {
  const measured = (value: number) => ({ value, basis: 'measured', evidence: 'wren-daisy-pla-230' }) as const;
  const { rows, conditions, warnings } = tableWith({
    machine: { topSpeed: [measured(300), measured(280)] },
    filament: { shortestLayerTime: [measured(4), measured(6)] },
  });
  expect(rows[0]?.bounds.find(({ name }) => name === 'machine')?.speed).toBe(280);
  expect(conditions.find(({ name }) => name === 'shortestLayerTime')?.window?.low).toBe(6);
  expect(warnings).toEqual(
    expect.arrayContaining([
      '2 top speeds were measured under the same conditions: the lowest counts.',
      '2 shortest layer times were measured under the same conditions: the longest counts.',
    ]),
  );
});
