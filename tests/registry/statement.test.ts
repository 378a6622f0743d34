import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Statement } from '../../src/registry/generated/documents.ts';
import { toPointer } from '../../src/registry/shape.ts';
import {
  basesByStrength,
  type Conditions,
  chooseStatement,
  statementsByWeight,
  statementsOf,
  weakerBasis,
  writtenStatements,
} from '../../src/registry/statement.ts';
import { changed, goodTexts, readText } from './good-documents.ts';

type Said = Statement<number>;

const here: Conditions = {
  machine: 'brackwater/lantern',
  nozzle: 'hs-0.6',
  polymer: 'PLA',
  nozzleTemperature: 230,
};

function chosen(...statements: Said[]): number | undefined {
  return chooseStatement(statements, here)?.value;
}

describe('the statement that counts', () => {
  test('is none where nothing is said, or nothing that fits', () => {
    expect(chooseStatement(undefined, here)).toBeNull();
    expect(chooseStatement([], here)).toBeNull();
    expect(chosen({ value: 1, basis: 'measured', at: { nozzle: 'hs-0.4' } })).toBeUndefined();
  });

  test('fits in every condition that it names', () => {
    const general: Said = { value: 1, basis: 'assumed' };
    expect(
      chosen({ value: 2, basis: 'measured', at: { nozzle: 'hs-0.6', nozzleTemperature: 231 } }, general),
    ).toBe(1);
    expect(chosen({ value: 2, basis: 'measured', at: { nozzle: 'hs-0.6', layerHeight: 0.2 } }, general)).toBe(
      1,
    );
    expect(
      chosen({ value: 2, basis: 'measured', at: { nozzle: 'hs-0.6', nozzleTemperature: 230 } }, general),
    ).toBe(2);
  });

  test('is the most specific, even on a weaker basis', () => {
    expect(
      chosen(
        { value: 1, basis: 'measured', date: '2026-05-01' },
        { value: 2, basis: 'assumed', at: { nozzle: 'hs-0.6', polymer: 'PLA' } },
        { value: 3, basis: 'measured', at: { nozzle: 'hs-0.6' } },
      ),
    ).toBe(2);
  });

  test('is then the one on the strongest basis, even if older', () => {
    const said = basesByStrength.map(
      (basis, index): Said => ({ value: index, basis, date: `2026-01-0${index + 1}` }),
    );
    expect(chosen(...said.toReversed())).toBe(0);
    expect(chosen(...said.slice(1).toReversed())).toBe(1);
    expect(basesByStrength).toEqual(['measured', 'published', 'derived', 'claimed', 'assumed']);
  });

  test('is then the newest; one without a date is older than any', () => {
    expect(
      chosen(
        { value: 1, basis: 'measured' },
        { value: 2, basis: 'measured', date: '2026-03-12' },
        { value: 3, basis: 'measured', date: '2025-12-31' },
      ),
    ).toBe(2);
  });

  test('is then the first', () => {
    expect(chosen({ value: 1, basis: 'claimed' }, { value: 2, basis: 'claimed' })).toBe(1);
  });
});

test('the statements that fit come in the order in which they count', () => {
  const said: Said[] = [
    { value: 1, basis: 'assumed' },
    { value: 2, basis: 'measured', at: { nozzle: 'other' } },
    { value: 3, basis: 'claimed', at: { polymer: 'PLA' } },
    { value: 4, basis: 'measured' },
  ];
  const order = statementsByWeight(said, ({ at }) => at ?? {}, here).map(({ value }) => value);
  expect(order).toEqual([3, 4, 1]);
});

test('what a statement requires may be read in another way', () => {
  const said: Said[] = [{ value: 1, basis: 'claimed', at: { nozzle: 'other' } }];
  expect(statementsByWeight(said, () => ({}), here)).toEqual(said);
});

test('the weaker of two bases', () => {
  expect(weakerBasis('measured', 'assumed')).toBe('assumed');
  expect(weakerBasis('claimed', 'published')).toBe('claimed');
  for (const basis of basesByStrength) expect(weakerBasis(basis, basis)).toBe(basis);
});

describe('of any statements', () => {
  const said: fc.Arbitrary<Said> = fc
    .record({
      value: fc.nat(),
      basis: fc.constantFrom(...basesByStrength),
      date: fc.option(fc.constantFrom('2025-12-31', '2026-01-01', '2026-03-12'), { nil: undefined }),
      at: fc.subarray(['machine', 'nozzle', 'polymer', 'nozzleTemperature'] as const),
      elsewhere: fc.boolean(),
    })
    .map(({ value, basis, date, at, elsewhere }) => ({
      value,
      basis,
      ...(date !== undefined && { date }),
      at: {
        ...Object.fromEntries(at.map((name) => [name, here[name]])),
        ...(elsewhere && { filament: 'another/one' }),
      },
    }));
  const rank = ({ basis, date, at }: Said) => JSON.stringify([Object.keys(at ?? {}).length, basis, date]);

  test('the one that counts does not depend on their order, but for full ties', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(said, { selector: rank }),
        fc.infiniteStream(fc.nat()),
        (statements, keys) => {
          const shuffled = statements
            .map((statement) => ({ statement, key: keys.next().value }))
            .sort((a, b) => a.key - b.key)
            .map(({ statement }) => statement);
          expect(chooseStatement(shuffled, here)).toBe(chooseStatement(statements, here));
        },
      ),
    );
  });

  test('one that fits is found if there is one', () => {
    fc.assert(
      fc.property(fc.array(said), (statements) => {
        const fits = statements.some(({ at }) => at?.filament === undefined);
        expect(chooseStatement(statements, here) !== null).toBe(fits);
      }),
    );
  });

  test('a statement that does not fit changes nothing', () => {
    fc.assert(
      fc.property(fc.array(said), said, fc.nat(), (statements, other, at) => {
        const unfit: Said = { ...other, at: { ...other.at, filament: 'another/one' } };
        const more = statements.toSpliced(at % (statements.length + 1), 0, unfit);
        expect(chooseStatement(more, here)).toBe(chooseStatement(statements, here));
      }),
    );
  });
});

describe('statements of a document', () => {
  test('are found with their places', () => {
    const { profile } = readText('filament', goodTexts.filament);
    const places = [...(profile === null ? [] : statementsOf(profile))].map(({ path, statement }) => [
      toPointer(path),
      statement.basis,
    ]);
    expect(places).toEqual([
      ['/density/0', 'claimed'],
      ['/nozzleTemperature/0', 'claimed'],
      ['/bedTemperature/0', 'claimed'],
      ['/meltFlow/0', 'measured'],
    ]);
  });

  test('are found as written where the document cannot be used', () => {
    const { document, profile } = readText('polymer', changed('polymer', '45..65 Cel', 'warm'));
    expect(profile).toBeNull();
    const written = [...(document === null ? [] : writtenStatements(document))];
    expect(written.map(({ statement }) => statement.value)).toEqual(['1.21..1.43 g/cm3', 'warm']);
  });
});
