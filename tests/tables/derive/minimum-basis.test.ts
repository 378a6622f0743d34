import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Policy } from '../../../src/registry/generated/documents.ts';
import type { SpeedTable } from '../../../src/tables/derive/speed-table.ts';
import { runs } from '../../property-runs.ts';
import { derivedWith, policyOf, registryWith, tableWith } from './pairing-with.ts';

type MinimumBasis = NonNullable<Policy['minimumBasis']>;

function tableOf(minimumBasis: MinimumBasis): SpeedTable {
  return tableWith({ policy: { minimumBasis } });
}

function flagged({ rows }: SpeedTable, flag: string) {
  return rows.filter(({ flags }) => flags.some((each) => each === flag));
}

describe('a number that rests on less than the policy asks for', () => {
  it('is refused, and the sentence says what would do', () => {
    const table = derivedWith({
      policy: { minimumBasis: { topSpeed: { basis: 'published', weaker: 'refuse' } } },
    });
    expect(table).toEqual({
      ok: false,
      error: {
        code: 'weakBasis',
        message:
          'The top speed of plumstead/wren is only claimed, and the policy "house" asks for published or better',
        help: 'Back it with something stronger, or take another policy.',
      },
    });
  });

  it('is flagged in the rows that it holds, and changes no speed', () => {
    const table = tableOf({ topSpeed: { basis: 'measured', weaker: 'flag' } });
    const plain = tableWith();
    expect(table.rows.map(({ speed }) => speed)).toEqual(plain.rows.map(({ speed }) => speed));
    expect(flagged(table, 'weakBasis')).toEqual(table.rows.filter(({ bound }) => bound === 'machine'));
    expect(table.warnings).toEqual([
      'What limits some rows rests on less than the policy asks for (flag weakBasis).',
    ]);
  });

  it('is capped: only its share is used', () => {
    const table = tableOf({ topSpeed: { basis: 'measured', weaker: 'cap', share: 0.5 } });
    for (const { bounds } of table.rows) {
      expect(bounds.find(({ name }) => name === 'machine')?.speed).toBe(215);
    }
    expect(flagged(table, 'capped').length).toBeGreaterThan(0);
  });

  it('is capped the other way round where it is a time', () => {
    const table = tableOf({ shortestLayerTime: { basis: 'measured', weaker: 'cap', share: 0.5 } });
    const { layerPath } = policyOf(registryWith({}));
    for (const { bounds, feature } of table.rows.filter((row) => row.feature !== 'travel')) {
      expect([feature, bounds.find(({ name }) => name === 'cooling')?.speed]).toEqual([
        feature,
        layerPath / 10,
      ]);
    }
  });

  it('slows nothing down and flags nothing where the basis is strong enough', () => {
    const minimumBasis: MinimumBasis = {
      meltFlow: { basis: 'measured', weaker: 'refuse' },
      topSpeed: { basis: 'claimed', weaker: 'refuse' },
      contourSpeed: { basis: 'assumed', weaker: 'cap', share: 0.1 },
    };
    expect(tableOf(minimumBasis).rows.map(({ speed, flags }) => ({ speed, flags }))).toEqual(
      tableWith().rows.map(({ speed, flags }) => ({ speed, flags })),
    );
  });

  it('never speeds a row up, however it is capped', () => {
    const share = fc.double({ min: 0.05, max: 1, noNaN: true });
    const plain = tableWith().rows;
    fc.assert(
      fc.property(share, share, share, (top, acceleration, time) => {
        const cap = (part: number) => ({ basis: 'measured', weaker: 'cap', share: part }) as const;
        const { rows } = tableOf({
          topSpeed: cap(top),
          acceleration: cap(acceleration),
          contourSpeed: cap(top),
          shortestLayerTime: cap(time),
        });
        for (const [index, row] of rows.entries()) {
          expect(row.speed).toBeLessThanOrEqual(plain[index]!.speed);
        }
      }),
      { numRuns: runs(30) },
    );
  });

  it('cannot be capped by a policy that names no share', () => {
    expect(
      derivedWith({ policy: { minimumBasis: { topSpeed: { basis: 'measured', weaker: 'cap' } } } }),
    ).toEqual({
      ok: false,
      error: {
        code: 'unusablePolicy',
        message:
          'The policy "house" cannot be used: `minimumBasis.topSpeed.share` must be given where a weaker number is to be capped',
        help: 'Correct it in its profile.',
      },
    });
  });
});
