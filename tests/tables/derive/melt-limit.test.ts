import { describe, expect, it } from 'vitest';
import { derivedWith, meltLimit, tableWith } from './pairing-with.ts';

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
        /^A limit of this table is not supported by its evidence, and `check` refuses it\. The limit 60 mm3\/s is above what the trial "wren-daisy-pla-215" supports: its readings give 24 mm3\/s/,
      ),
    ]);
  });

  it('flags every row that it could hold', () => {
    for (const { feature, flags } of unsupported.rows) {
      expect([feature, flags]).toEqual([feature, feature === 'travel' ? [] : ['unsupported']]);
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
    expect(rows[0]?.flags).toEqual(['unsupported']);
  });
});

it('warns where the controller software has changed since the trial', () => {
  const { rows, warnings } = tableWith({ machine: { firmware: '2.0.0' } });
  expect(warnings.join()).toContain(
    'A limit of this table rests on old evidence. The trial was run with firmware 1.3.0',
  );
  expect(rows[0]?.flags).toEqual(['stale']);
});

it('has no flag and no warning where every limit stands', () => {
  const { rows, warnings } = tableWith();
  expect(warnings).toEqual([]);
  expect(new Set(rows.flatMap(({ flags }) => flags))).toEqual(new Set());
});
