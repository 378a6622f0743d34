import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { checkShape } from '../../../src/registry/form/check-shape.ts';
import { validators } from '../../../src/registry/generated/validators.js';
import { type Kind, kinds } from '../../../src/registry/kind.ts';
import type { Path } from '../../../src/registry/shape.ts';
import { runs } from '../../property-runs.ts';
import { changed, goodTexts, readText } from '../good-documents.ts';

describe('what does not fit is left out, the rest is kept:', () => {
  const data = (kind: Kind, from: string, to: string) =>
    readText(kind, changed(kind, from, to)).profile?.data;

  test('of two statements the good one', () => {
    const two = changed(
      'machine',
      '  - {value: 470 mm/s, basis: claimed, source: lantern-sheet}',
      '  - {value: 600 mm, basis: claimed}\n  - {value: 500 mm/s, basis: claimed}\n  - {value: 400 mm/s, basis: guessed}',
    );
    expect(readText('machine', two).profile?.data).toMatchObject({
      topSpeed: [{ value: 500, basis: 'claimed' }],
      acceleration: [{ value: 14_500 }],
    });
  });

  test('a key that nobody knows, and nothing else', () => {
    expect(data('source', 'standing: read', 'standing: read\ncolour: red')).toEqual(
      readText('source', goodTexts.source).profile?.data,
    );
  });

  test('a wrong value that need not be there', () => {
    const changedData = data('filament', '42.8..46.1 mm3/s', '42.8..46.1 mm');
    expect(changedData).toMatchObject({ meltFlow: [{ value: 43, basis: 'measured' }] });
    expect(changedData).not.toHaveProperty(['meltFlow', 0, 'interval']);
  });

  test('the other nozzles of a hot end', () => {
    const nozzles = data('machine', 'diameter: 0.4 mm', 'diameter: wide');
    expect(nozzles).toMatchObject({ hotEnds: [{ nozzles: [{ id: 'hs-0.6', diameter: 0.6 }] }] });
  });

  test('several entries of one list, whatever their order', () => {
    const rows = data(
      'trial',
      '    - [20, 500, 1.49]\n',
      '    - x\n    - [1, 2, 3]\n    - y\n    - {}\n    - z\n',
    );
    expect(rows).toMatchObject({
      observations: {
        rows: [
          [1, 2, 3],
          [28, 500, 1.48],
        ],
      },
    });
  });

  test('an optional list whose every entry is wrong goes as a whole', () => {
    expect(data('machine', '1580 EUR', 'cheap')).not.toHaveProperty('price');
  });

  test('a document that lacks what it must have cannot be used', () => {
    expect(readText('machine', changed('machine', '470 mm/s', 'fast')).profile).toBeNull();
    expect(checkShape('machine', {}).data).toBeNull();
  });
});

test('a document is not changed by being checked', () => {
  const written: unknown = parse(changed('machine', '0.4 mm', 'wide'));
  const before = structuredClone(written);
  checkShape('machine', written);
  expect(written).toEqual(before);
});

/** Every place of a document, its root first. */
function* placesOf(value: unknown, path: Path = []): Generator<Path> {
  yield path;
  if (typeof value !== 'object' || value === null) return;
  for (const [key, inner] of Object.entries(value))
    yield* placesOf(inner, [...path, Array.isArray(value) ? Number(key) : key]);
}

function replaced(value: unknown, [step, ...rest]: Path, by: unknown): unknown {
  if (step === undefined) return by;
  const copy: unknown = Array.isArray(value) ? [...value] : { ...(value as object) };
  Reflect.set(copy as object, step, replaced(Reflect.get(copy as object, step), rest, by));
  return copy;
}

const anyValue = fc.oneof(
  fc.jsonValue(),
  fc.constantFrom(
    '230 Cel',
    '75',
    '20..30 mm',
    'NaN mm',
    '2026-02-30',
    '',
    Number.NaN,
    Number.POSITIVE_INFINITY,
  ),
  fc
    .constantFrom<unknown>('__proto__', 'constructor', '0')
    .map((key) => JSON.parse(`{"${String(key)}": {"a": 1}}`)),
);

const slip = fc.constantFrom(...kinds).chain((kind) => {
  const good: unknown = parse(goodTexts[kind]);
  return fc.record({
    kind: fc.constant(kind),
    good: fc.constant(good),
    path: fc.constantFrom(...placesOf(good)),
    value: anyValue,
  });
});

describe('whatever is written', () => {
  test('a good document is accepted as it is', () => {
    for (const kind of kinds) {
      const checked = checkShape(kind, parse(goodTexts[kind]));
      expect(checked.hits).toEqual([]);
      expect(checked.data).not.toBeNull();
    }
  });

  test('any value that is no document is refused, without an exception', { tags: 'long' }, () => {
    fc.assert(
      fc.property(fc.constantFrom(...kinds), fc.jsonValue(), (kind, value) => {
        const { hits, data } = checkShape(kind, value);
        expect(hits.length).toBeGreaterThan(0);
        expect(data).toBeNull();
      }),
      { numRuns: runs(2000) },
    );
  });

  test('one place of a good document replaced: a finding wherever the schema refuses it', {
    tags: 'long',
  }, () => {
    fc.assert(
      fc.property(slip, ({ kind, good, path, value }) => {
        const written = replaced(good, path, value);
        const accepted = validators[kind](written);
        const { hits, data } = checkShape(kind, written);
        if (!accepted) expect(hits.length).toBeGreaterThan(0);
        if (hits.length === 0) expect(data).not.toBeNull();
      }),
      { numRuns: runs(3000) },
    );
  });

  test('and every finding points at the replaced place, below it, or at what limits it', {
    tags: 'long',
  }, () => {
    fc.assert(
      fc.property(slip, ({ kind, good, path, value }) => {
        for (const hit of checkShape(kind, replaced(good, path, value)).hits) {
          const shared = Math.min(hit.path.length, path.length);
          expect(hit.path.slice(0, shared)).toEqual(path.slice(0, shared));
        }
      }),
      { numRuns: runs(3000) },
    );
  });
});
