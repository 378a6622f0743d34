import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { tableFileName, tableFiles } from '../../../src/tables/write/table-files.ts';
import { runs } from '../../property-runs.ts';
import { tableWith } from '../derive/pairing-with.ts';

const table = tableWith();
const longestEnding = Math.max(
  ...tableFiles(table).map(([name]) => name.length - tableFileName(table).length),
);

describe('the names of the files of a table', () => {
  it('say what the table is of', () => {
    expect(tableFileName(table)).toBe('plumstead-wren--hs-0.6--oakhollow-daisy-pla--house');
    expect(tableFileName(table, true)).toBe('plumstead-wren--hs-0.6--oakhollow-daisy-pla--house--230c');
  });

  it('stay under 120 characters, whatever the ids', () => {
    const id = fc.stringMatching(/^[a-z][a-z0-9-]{0,63}$/);
    fc.assert(
      fc.property(id, id, id, id, fc.boolean(), (maker, model, nozzle, policy, isOfFamily) => {
        const long = {
          ...table,
          machine: `${maker}/${model}`,
          nozzle,
          filament: `${model}/${maker}`,
          policy,
        };
        expect(tableFileName(long, isOfFamily).length + longestEnding).toBeLessThan(120);
      }),
      { numRuns: runs(200) },
    );
  });

  it('differ where the ids differ beyond what is cut', () => {
    const machine = `plumstead/${'w'.repeat(64)}`;
    const [one, other] = ['a', 'b'].map((end) =>
      tableFileName({ ...table, machine, filament: `oak/${'d'.repeat(60)}${end}` }),
    );
    expect(one).not.toBe(other);
  });
});
