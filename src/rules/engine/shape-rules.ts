import type { ShapeRule } from '../../registry/form/shape-message.ts';
import type { ReadingText } from './rule.ts';

const schema = 'JSON Schema draft-07, schema/*.schema.json';

/** What a document must look like to fit the schema of its kind. */
export const shapeRuleTexts: Readonly<Record<ShapeRule, ReadingText>> = {
  'shape/unknown-key': {
    statement: 'Every key is one that the schema of the kind knows.',
    rationale: 'A misspelled key would be passed over, and its value be missing in every table.',
    source: schema,
    example: {
      kind: 'machine',
      bad: 'chamber:\n  enclosed: true\n  heatd: false\n  sensed: true',
      good: 'chamber:\n  enclosed: true\n  heated: false\n  sensed: true',
    },
  },
  'shape/missing-key': {
    statement: 'Every key that the schema of the kind requires is there.',
    rationale: 'Without it the document cannot be used for what it is for.',
    source: schema,
    example: {
      kind: 'machine',
      bad: 'envelope: {x: 220 mm, y: 220 mm}',
      good: 'envelope: {x: 220 mm, y: 220 mm, z: 250 mm}',
    },
  },
  'shape/not-a-choice': {
    statement: 'A word that is one of a list is spelled as in the list.',
    rationale: 'Calculations depend on these words: a moving bed is not accelerated like a gantry.',
    source: schema,
    example: {
      kind: 'machine',
      bad: 'layout: gantri',
      good: 'layout: gantry',
    },
  },
  'shape/wrong-type': {
    statement: 'Text, numbers, lists and mappings stand where the schema wants them.',
    rationale: 'Statements of one quantity form a list, since several sources may state it.',
    source: schema,
    example: {
      kind: 'machine',
      bad: 'topSpeed: {value: 500 mm/s, basis: claimed, source: plumstead-wren-sheet}',
      good: 'topSpeed:\n  - {value: 500 mm/s, basis: claimed, source: plumstead-wren-sheet}',
    },
  },
  'shape/text-form': {
    statement: 'Ids, versions and other texts of a fixed form have that form.',
    rationale: 'Ids are parts of paths and references, and versions are compared by number.',
    source: `${schema}; Semantic Versioning 2.0.0 for versions`,
    example: {
      kind: 'machine',
      bad: 'version: "1.0"',
      good: 'version: 1.0.0',
    },
  },
  'shape/date-form': {
    statement: 'A date is a day of the calendar, written YYYY-MM-DD.',
    rationale: 'The order of day and month differs between countries, and the newest statement counts.',
    source: 'ISO 8601-1:2019, 5.2.2.1: calendar date, extended format.',
    example: {
      kind: 'filament',
      bad: `density:
  - {value: 1.27 g/cm3, basis: claimed, source: oakhollow-clover-petg-sheet, date: 2026-02-30}`,
      good: `density:
  - {value: 1.27 g/cm3, basis: claimed, source: oakhollow-clover-petg-sheet, date: 2026-02-28}`,
    },
  },
  'shape/size': {
    statement:
      'Lists, texts and numbers are neither shorter, smaller, longer nor larger than the schema allows.',
    rationale: 'An empty list says nothing, and a text of thousands of letters was pasted by mistake.',
    source: schema,
    example: {
      kind: 'machine',
      bad: 'topSpeed: []',
      good: 'topSpeed:\n  - {value: 500 mm/s, basis: claimed, source: plumstead-wren-sheet}',
    },
  },
};
