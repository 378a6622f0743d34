import { aQuantityOf, type Dimension, dimensionInfo, dimensions } from '../../src/units/dimension.ts';
import { numberPattern, spaces } from '../../src/units/number-form.ts';
import { unitsOf } from '../../src/units/unit-table.ts';

// The characters themselves, since dialects write their codes in different ways.
const space = `[${spaces}]`;

function escaped(text: string): string {
  return text.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&');
}

function spellingsOf(dimension: Dimension): string[] {
  return unitsOf(dimension).flatMap((unit) => [unit.code, ...unit.aliases]);
}

function oneOf(spellings: readonly string[]): string {
  return `(?:${spellings.map(escaped).join('|')})`;
}

/** Spaces and a unit; the unit `1` needs a space before it, or 0.51 would be 0.5 of it. */
function unitPattern(dimension: Dimension): string {
  const spellings = spellingsOf(dimension);
  const [digits, others] = [
    spellings.filter((each) => /^[0-9]/.test(each)),
    spellings.filter((each) => !/^[0-9]/.test(each)),
  ];
  const free = `${space}*${oneOf(others)}`;
  return digits.length === 0 ? free : `(?:${free}|${space}+${oneOf(digits)})`;
}

/** What editors complete: a number to be replaced, and each unit behind it. */
function snippets(codes: readonly string[], example: string): object[] {
  const [number = ''] = example.split(' ');
  return codes.map((code) => ({ label: `… ${code}`, body: `\${1:${number}} ${code}` }));
}

function definitionsOf(dimension: Dimension): [string, object][] {
  const { description, canonicalUnit, usualUnit, example, exampleRange } = dimensionInfo[dimension];
  const quantity = aQuantityOf(dimension);
  const codes = unitsOf(dimension).map((unit) => unit.code);
  const wanted = (form: string, sample: string) =>
    `${quantity.charAt(0).toUpperCase()}${quantity.slice(1)} is written ${form} and a unit: ${codes.join(', ')}. For instance: ${sample}`;
  const units = `Units: ${codes.join(', ')}.`;
  const stored = canonicalUnit === undefined ? 'It is never converted.' : `Calculated in ${canonicalUnit}.`;
  const title = `${description.charAt(0).toUpperCase()}${description.slice(1)}`;
  return [
    [
      dimension,
      {
        title,
        description: `${title}: a number, a space and a unit. ${units} ${stored}`,
        type: 'string',
        pattern: `^${space}*${numberPattern}${unitPattern(dimension)}${space}*$`,
        patternErrorMessage: wanted('as a number, a space', example),
        examples: [example],
        defaultSnippets: snippets(codes, example),
      },
    ],
    [
      `${dimension}Range`,
      {
        title: `Range of ${description}`,
        description: `Both ends of ${quantity}, the lower first, joined by two points; the one unit at the end serves both. ${units} ${stored}`,
        type: 'string',
        pattern: `^${space}*${numberPattern}${space}*\\.\\.${space}*${numberPattern}${unitPattern(dimension)}${space}*$`,
        patternErrorMessage: wanted('as two numbers joined by two points, a space', exampleRange),
        examples: [exampleRange],
        defaultSnippets: snippets(codes, exampleRange),
      },
    ],
    [
      `${dimension}Unit`,
      {
        title: `Unit of ${description}`,
        description: `The unit of a column that holds ${quantity} in each row.`,
        type: 'string',
        enum: spellingsOf(dimension),
        examples: [usualUnit],
      },
    ],
  ];
}

/** The JSON Schema (draft-07) of quantities: for each dimension D the definitions `D`, `DRange` and `DUnit`. */
export function quantitySchema(): object {
  return {
    $schema: 'http://json-schema.org/draft-07/schema#',
    $id: 'https://meltbounds.example/schema/quantity.schema.json',
    title: 'Quantities',
    description:
      'Quantities as text: a number and a UCUM unit code (ISO 4217 code for money), one definition for each dimension. Print symbols such as mm³/s and °C are read too.',
    definitions: Object.fromEntries(dimensions.flatMap(definitionsOf)),
  };
}
