import { rowFlags } from '../../../src/tables/derive/row-flag.ts';
import type { SpeedTable } from '../../../src/tables/derive/speed-table.ts';
import { tableWith } from '../derive/pairing-with.ts';

const id = (letter: string) => `${letter.repeat(40)}-${letter.repeat(23)}`;
const sentence = 'Wherever somebody wrote more about it than anybody at the machine has time to read, ';

/** A table with more of everything than a bench will ever find: names, layer heights, warnings, flags, versions. */
export function longTable(): SpeedTable {
  const table = tableWith({
    policy: { layerHeights: Array.from({ length: 12 }, (_, index) => 0.2 + 0.05 * index) },
  });
  return {
    ...table,
    machine: `${id('w')}/${id('m')}`,
    filament: `${id('o')}/${id('q')}`,
    nozzle: id('n'),
    policy: id('p'),
    rows: table.rows.map((row) => ({
      ...row,
      bound: row.layerHeight < 0.2 ? 'quality' : row.layerHeight < 0.4 ? 'machine' : 'cooling',
      basis: 'assumed',
      flags: rowFlags,
      quirks: [0, 11],
    })),
    quirks: Array.from({ length: 12 }, () => ({
      of: { kind: 'machine', id: `${id('w')}/${id('m')}` },
      date: '2026-05-07',
      what: sentence.repeat(3),
      effect: sentence.repeat(3),
      wayRound: sentence.repeat(3),
      concerns: null,
    })),
    origin: {
      simulated: Array.from({ length: 9 }, (_, index) => `${id('t')}-${index}`),
      invented: [{ kind: 'machine', id: `${id('w')}/${id('m')}` }],
    },
    conditions: table.conditions.map((row) => ({
      ...row,
      window: null,
      isStated: row.name.length % 2 === 0,
      ofFamily: { family: 'PA66-GF30', low: 100, high: 120 },
      flags: rowFlags,
    })),
    largestFlow: { ...table.largestFlow, interval: { low: 123.4, high: 125.6 }, note: sentence.repeat(2) },
    warnings: Array.from({ length: 12 }, () => sentence.repeat(4)),
    inputs: [`${id('w')}/${id('m')}`, `${id('o')}/${id('q')}`, id('p')].map((input, index) => ({
      kind: 'filament',
      id: input,
      version: '10.11.12',
      digest: String(index).repeat(64),
    })),
  };
}

/** The same with names and bounds just short enough for large letters. */
export function roomyTable(): SpeedTable {
  const table = longTable();
  return {
    ...table,
    filament: `${'w'.repeat(20)}/pla`,
    machine: `${'m'.repeat(18)}/a`,
    rows: table.rows.map((row) => ({
      ...row,
      bound: row.layerHeight < 0.4 ? 'machine' : 'cooling',
      quirks: [0],
      basis: null,
    })),
  };
}
