import { readFileSync } from 'node:fs';
import { Ajv, type ValidateFunction } from 'ajv';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { quantitySchema } from '../../scripts/generate/quantity-schema.ts';
import { type Dimension, dimensionInfo, dimensions } from '../../src/units/dimension.ts';
import { parseQuantity, parseRange, parseUnit } from '../../src/units/parse-quantity.ts';
import { units } from '../../src/units/unit-table.ts';
import { runs } from '../property-runs.ts';
import { anyDimension, anyNumberText, anyScrap, anySpaces, anyUnit, spellingOf } from './texts.ts';

const ajv = new Ajv({ strict: true });
// What language servers for YAML read and validators pass over.
ajv.addVocabulary(['defaultSnippets', 'patternErrorMessage']);
const { $id } = quantitySchema() as { $id: string };
ajv.addSchema(quantitySchema());

function compile(suffix: string): ReadonlyMap<Dimension, ValidateFunction> {
  return new Map(
    dimensions.map((each) => [each, ajv.compile({ $ref: `${$id}#/definitions/${each}${suffix}` })]),
  );
}

const single = compile('');
const range = compile('Range');
const unitAlone = compile('Unit');

// What a pattern cannot tell: the order of two ends, and where a scale begins.
const beyondPatterns = new Set(['rangeReversed', 'belowAbsoluteZero']);

function isRead(result: ReturnType<typeof parseQuantity> | ReturnType<typeof parseRange>): boolean {
  return result.ok || beyondPatterns.has(result.error.code);
}

const wellFormed = fc
  .tuple(anyUnit, anyNumberText, anyNumberText, anySpaces, anySpaces)
  .chain(([unit, low, high, gap, outer]) =>
    spellingOf(unit).map((spelling) => {
      const tail = `${gap === '' && spelling === '1' ? ' ' : gap}${spelling}${outer}`;
      return { unit, single: `${outer}${low}${tail}`, range: `${low}${gap}..${outer}${high}${tail}` };
    }),
  );

/** Well-formed texts with one scrap pushed in or one character lost, and plain scraps. */
const text = fc.oneof(
  anyScrap,
  fc
    .tuple(wellFormed, fc.boolean(), anyScrap, fc.nat(30), fc.boolean())
    .map(([formed, one, scrap, at, lose]) => {
      const whole = one ? formed.single : formed.range;
      return lose ? whole.slice(0, at) + whole.slice(at + 1) : whole.slice(0, at) + scrap + whole.slice(at);
    }),
);

describe('the schema and the parser agree', () => {
  test('on every well-formed quantity and range', () => {
    fc.assert(
      fc.property(wellFormed, (formed) => {
        const { dimension } = formed.unit;
        expect(single.get(dimension)?.(formed.single)).toBe(true);
        expect(isRead(parseQuantity(formed.single, dimension))).toBe(true);
        expect(range.get(dimension)?.(formed.range)).toBe(true);
        expect(isRead(parseRange(formed.range, dimension))).toBe(true);
      }),
      { numRuns: runs(3000) },
    );
  });

  test('on any text, of its own dimension or another', { tags: 'long' }, () => {
    fc.assert(
      fc.property(text, anyDimension, (written, dimension) => {
        expect(single.get(dimension)?.(written)).toBe(isRead(parseQuantity(written, dimension)));
        expect(range.get(dimension)?.(written)).toBe(isRead(parseRange(written, dimension)));
      }),
      { numRuns: runs(5000) },
    );
  });

  test('on slips in a text of the asked dimension', { tags: 'long' }, () => {
    const slip = wellFormed.chain(({ unit, single: whole, range: both }) =>
      fc.tuple(fc.constant(unit.dimension), fc.constantFrom(whole, both), fc.nat(25), anyScrap),
    );
    fc.assert(
      fc.property(slip, ([dimension, whole, at, scrap]) => {
        for (const written of [
          whole.slice(0, at) + whole.slice(at + 1),
          whole.slice(0, at) + scrap + whole.slice(at),
        ]) {
          expect(single.get(dimension)?.(written)).toBe(isRead(parseQuantity(written, dimension)));
          expect(range.get(dimension)?.(written)).toBe(isRead(parseRange(written, dimension)));
        }
      }),
      { numRuns: runs(3000) },
    );
  });

  test('on every unit of every dimension in every dimension', { tags: 'long' }, () => {
    for (const spelling of units.flatMap((unit) => [unit.code, ...unit.aliases, `${unit.code} `])) {
      for (const dimension of dimensions) {
        expect(unitAlone.get(dimension)?.(spelling)).toBe(parseUnit(spelling, dimension).ok);
      }
    }
  });

  test.each([
    '0.123456789012345 mm',
    '0.1234567890123456 mm',
    '100000000000000 mm',
    '1000000000000000 mm',
    `0.${'0'.repeat(21)}1 mm`,
    `0.${'0'.repeat(22)}1 mm`,
  ])('at the limits of length: %s', (written) => {
    expect(single.get('length')?.(written)).toBe(parseQuantity(written, 'length').ok);
  });
});

test('15 significant digits are accepted, 16 are not', () => {
  expect(
    ['0.123456789012345 mm', '0.1234567890123456 mm'].map((each) => single.get('length')?.(each)),
  ).toEqual([true, false]);
});

test('each dimension has a quantity, a range and a unit, each with title, description and a valid example', () => {
  const { definitions } = quantitySchema() as { definitions: Record<string, Record<string, unknown>> };
  expect(Object.keys(definitions)).toHaveLength(3 * dimensions.length);
  for (const [name, definition] of Object.entries(definitions)) {
    expect(definition).toMatchObject({
      title: expect.any(String),
      description: expect.any(String),
      type: 'string',
    });
    const validate = ajv.compile({ $ref: `${$id}#/definitions/${name}` });
    expect((definition.examples as string[]).map((example) => validate(example))).toEqual([true]);
  }
});

test.each(dimensions)('a bare number and an empty text are refused as %s', (dimension) => {
  const validate = single.get(dimension);
  expect([75, '75', '', dimensionInfo[dimension].exampleRange].map((each) => validate?.(each))).toEqual([
    false,
    false,
    false,
    false,
  ]);
});

test('the file in schema/ is what the generator writes', () => {
  const file = readFileSync(new URL('../../schema/quantity.schema.json', import.meta.url), 'utf8');
  expect(file).toBe(`${JSON.stringify(quantitySchema(), null, 2)}\n`);
});
